# The vat begins below START and nobody asks for anything.
wait until booster on, at most 20 min
wait 1 min
pure_level falls silent
wait until booster off, at most 5 min
pure_level works again
wait until booster on, at most 20 min
wait until told vat/pure/state full, at most 2 h
wait until booster off, at most 2 min
