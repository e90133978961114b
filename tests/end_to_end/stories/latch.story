# The test kills the daemon as soon as it says that the leak latches, and starts it again.
wait until booster on, at most 20 min
wait 1 min
spill 2 l
wait until booster off, at most 3 min
# Only the new process says this.
wait until told alarm/unclean_start/state unacknowledged, at most 20 min
wait until told alarm/leak/latched true, at most 1 min
dry the floor
# Past the five minutes of caution after an unclean start: nothing but the latch holds the pump.
wait 6 min
wait until told alarm/leak/latched true, at most 1 s
wait until booster off, at most 1 s
ask reset leak
wait until told alarm/leak/latched false, at most 2 min
wait 2 min
wait until booster off, at most 1 s
ask start
wait until booster on, at most 10 min
wait until told vat/pure/state full, at most 2 h
wait until booster off, at most 2 min
