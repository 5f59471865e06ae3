house_library(handheld-base keymap.c profile.c profile-learn.c handheld-typing.c handheld-meaning.c
              handheld-events.c handheld-device.c LIBS base PKG xkbcommon libevdev)
house_driver(handheld handheld.c LIBS handheld-base)
