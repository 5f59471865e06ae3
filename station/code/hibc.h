/* The Health Industry Bar Code: ANSI/HIBC 2.6, Supplier Labeling Standard.
 *
 * Text of digits, capitals and '- . $ / + %' and space, in Code 128, Code 39, Data Matrix, QR or Aztec:
 *
 *     + A999 1234 5 / $$5 20015 10X3 / S77DEFG45 / 16D20111212  /     combined
 *     | |    |    |   |   |     |      |           |            |
 *     | |    |    |   |   |     lot    serial      made         check character (here it happens to be '/')
 *     | |    |    |   |   use by, in the form that 5 announces: day 15 of 2020
 *     | |    |    |   date and lot follow
 *     | |    |    unit of measure: 0 'unit of use', 1-8 levels of packing, 9 variable quantity
 *     | |    PCN, product code, 1 to 18 characters
 *     | LIC, labeler code, a letter and three characters
 *     flag
 *
 * or as two symbols, a PRIMARY with the product and a SECONDARY with the rest:
 *
 *     +A123BJC5D6E71G          primary; G is its check character
 *     +$$52001510X3GD          secondary; G is the LINK, the primary's check character; D is its own check
 *
 * CHECK CHARACTER: the sum of all before it modulo 43 (check-digit.h). It is always there.
 *
 * THE SECONDARY, and the first part behind '/':
 *
 *     25330LOT        five digits: year and day of the year, then the lot
 *     $LOT            lot only                $+SERIAL     serial only
 *     $$MMYYLOT       month and year: until the last day of that month
 *     $$2MMDDYYLOT    $$3YYMMDDLOT    $$4YYMMDDHHLOT    $$5YYDDDLOT    $$6YYDDDHHLOT    $$7LOT
 *     $$+…            the same forms with a serial instead of the lot
 *     $$8QQ… $$9QQQQQ…   a quantity of 2 or 5 digits, then one of the date forms
 *
 * FURTHER PARTS begin with '/' (in a secondary of their own with '+'): S serial, 14D use by and 16D made as
 * YYYYMMDD (16D as YYMMDD by older labels), Q quantity, and every $ form above.
 *
 * '+/' begins the Provider Applications Standard: what hospitals print about their own people, places and
 * patients. Nothing of it is read or kept (rule 20).
 *
 * Checked against: figures 1 and 2 of the standard and the public vectors named in the tests.
 */
#ifndef BANDTALLY_CODE_HIBC_H
#define BANDTALLY_CODE_HIBC_H

#include "code/code.h"

/* Reads one symbol that begins with '+': fills kind, elements and fields of `out`. 0 or -EINVAL with `fault`;
 * `out` is then undefined. */
int hibc_read(struct code *out, const char *text, size_t size, int32_t today, struct code_fault *fault);

#endif
