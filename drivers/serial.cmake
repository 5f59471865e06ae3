house_library(serial-base serial-line.c)
house_driver(serial serial.c LIBS serial-base)
