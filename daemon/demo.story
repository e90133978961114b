# What daemon/demo.sh plays on the pretend room of config/demo.toml. Each `wait` must come true in
# the MQTT messages of the daemon or at the plug, or the story has failed.
say It is morning in the attic. The vat is below the mark at which to fill it.
wait until pump on, at most 10 min
say The daemon has heard the leak sensor say "dry" and the gauge give the level. It starts the
say booster pump, and the plug has confirmed it. Each ON is a lease of a minute, then renewed.
wait until told vat/blue/state filling, at most 5 min
wait until told vat/blue/ready true, at most 4 h
say The vat holds enough pure water now: it is ready for a mixing day. The pump goes on to the mark.

wait 10 min
say Now the resin is spent. Water after it is no longer at zero.
spend the resin
wait until told alarm/resin_breakthrough/state unacknowledged, at most 3 h
say The daemon has seen it, in the median of settled readings, and told the phone what to do.
say Ann puts fresh resin in and says so.
replace the resin
tell replaced
wait until told alarm/resin_breakthrough/state normal, at most 2 h
say Zero again.

wait until pump on, at most 4 h
say A fitting lets go. There is water on the floor.
spill 2 l
wait until pump off, at most 3 min
wait until told alarm/leak/state unacknowledged, at most 1 min
say The pump is off. The daemon sent OFF first, then wrote the latch down, then told the phone.
say Ann tightens the fitting and dries the floor.
dry the floor
wait 15 min
wait until told alarm/leak/state latched_unacknowledged, at most 10 min
wait until pump off, at most 1 s
say The floor is dry, and the pump still stays off. Dry alone proves nothing: somebody has to look.
say Ann has looked. She resets the alarm and confirms it.
ask reset leak
wait until told alarm/leak/state normal, at most 2 min
wait until pump off, at most 1 s
say The alarm is normal. A reset starts nothing.
say Now she asks for water again.
ask start
wait until pump on, at most 10 min
say The fill begins anew.
wait until told vat/blue/state full, at most 12 h
wait until pump off, at most 1 min
say The vat is at its mark, and the pump has stopped by itself.
