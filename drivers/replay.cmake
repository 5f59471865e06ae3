house_driver(replay replay.c)
