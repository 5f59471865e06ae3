house_library(camera-base reading.c plane.c picture.c reader-zbar.c zxing.cpp eyes.c islands.c witness.c steady.c sight.c glimpse.c show.c video.c
              LIBS base m PKG zbar zxing libpng libjpeg)
house_driver(camera camera.c LIBS camera-base)
