# Sensors die and come back, water runs out, a person is slow: what a hub sees of a bad hour.
wait until booster on, at most 20 min
wait 1 min
product_tds falls silent
feed_tds talks garbage
wait until told source/product_tds/online false, at most 20 min
product_tds works again
feed_tds works again
wait until told source/product_tds/online true, at most 20 min
pure_level falls silent
wait until booster off, at most 5 min
wait until told source/pure_level/online false, at most 5 min
pure_level works again
wait until booster on, at most 20 min
spill 2 l
wait until booster off, at most 3 min
wait until told alarm/leak/latched true, at most 1 min
dry the floor
wait 5 min
