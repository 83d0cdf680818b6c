"""The books' words, put right before it is told what is strange in them."""
