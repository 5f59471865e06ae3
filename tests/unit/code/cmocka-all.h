/* What cmocka wants before its own header. */
#ifndef BANDTALLY_TESTS_CODE_CMOCKA_ALL_H
#define BANDTALLY_TESTS_CODE_CMOCKA_ALL_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define TODAY 20261125

#endif
