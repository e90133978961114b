# What daemon/demo.sh plays on the pretend room of config/demo.toml. Each `wait` must come true in
# the daemon's MQTT messages or at the plug, or the story has failed.
say It is morning in the attic. The vat has sunk below the mark at which to fill it.
wait until pump on, at most 10 min
say The leak sensor says "dry" and the gauge gives the level: the daemon starts the booster pump.
say The plug confirms it. Each ON is good for one minute only, then it must be said again.
wait until told vat/blue/state filling, at most 5 min
wait until told vat/blue/ready true, at most 4 h
say There is enough pure water now for a mixing day: the vat is ready. The pump fills on to the mark.

wait 10 min
say Now the resin is spent. The water after it is no longer at zero.
spend the resin
wait until told alarm/resin_breakthrough/state unacknowledged, at most 3 h
say The daemon has seen it, in the median of several readings, and has told the phone.
say Ann answers that she has seen it, puts fresh resin in and tells the daemon.
ask acknowledge resin_breakthrough
replace the resin
tell replaced
wait until told alarm/resin_breakthrough/state normal, at most 2 h
say The product water counts from zero again.

wait until pump on, at most 4 h
say A fitting lets go. There is water on the floor.
spill 2 l
wait until pump off, at most 3 min
wait until told alarm/leak/state unacknowledged, at most 1 min
say The pump is off. The daemon sent OFF first, wrote it down second, and told the phone third.
say Ann tightens the fitting and dries the floor.
dry the floor
wait 15 min
wait until told alarm/leak/state latched_unacknowledged, at most 10 min
wait until pump off, at most 1 s
say The floor is dry, and the pump stays off. "Dry" alone is not enough: a person has to look.
say Ann has looked. She resets the alarm, and confirms that she means it.
ask reset leak
wait until told alarm/leak/state normal, at most 2 min
wait until pump off, at most 1 s
say The alarm is normal. The pump is still off: a reset starts nothing.
say Now she asks for water again.
ask start
wait until pump on, at most 10 min
say The fill begins anew.
wait until told vat/blue/state full, at most 12 h
wait until pump off, at most 1 min
say The vat is at its mark, and the pump has stopped by itself.
