/* The rules that a part of a GS1 value must follow, beyond length and character set.
 *
 * The names in the GS1 Barcode Syntax Dictionary are in brackets. Where a rule rests on a list, the list is a
 * fact of the standard that is named: ISO 3166-1 (countries), ISO 4217 (currencies), UNECE Recommendation 21
 * (packages). A code that such a list gains later is refused until the list here has it.
 */
#ifndef BANDTALLY_CODE_GS1_RULES_H
#define BANDTALLY_CODE_GS1_RULES_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "code/fault.h"

enum gs1_rule {
	RULE_NONE = 0,
	RULE_CHECK_DIGIT,     /* [csum] last digit by mod 10 */
	RULE_CHECK_PAIR,      /* [csumalpha] last two characters by mod 1021 */
	RULE_PREFIX,          /* [gcppos1] begins with a company prefix: 4 digits at least; not looked up */
	RULE_PREFIX_SECOND,   /* [gcppos2] the same from the second character */
	RULE_DATE,            /* [yymmdd] */
	RULE_DATE_0,          /* [yymmd0] day 00 allowed: the last of the month */
	RULE_DATE_LONG,       /* [yyyymmdd] */
	RULE_DATE_LONG_0,     /* [yyyymmd0] */
	RULE_HOUR,            /* [hh] */
	RULE_HOUR_MINUTE,     /* [hhmi] */
	RULE_MINUTE,          /* [mi] */
	RULE_SECOND,          /* [ss] */
	RULE_HYPHEN,          /* [hyphen] a minus sign, for degrees below zero */
	RULE_IBAN,            /* [iban] ISO 13616: country, MOD 97-10 */
	RULE_IMPORTER,        /* [importeridx] one character of base64url */
	RULE_COUNTRY,         /* [iso3166] three digits */
	RULE_COUNTRY_OR_999,  /* [iso3166999] */
	RULE_COUNTRY_LETTERS, /* [iso3166alpha2] */
	RULE_CURRENCY,        /* [iso4217] three digits */
	RULE_SEX,             /* [iso5218] 0, 1, 2 or 9 */
	RULE_LATITUDE,        /* [latitude] 10 digits, degrees from the south pole × 10^7 */
	RULE_LONGITUDE,       /* [longitude] 10 digits, degrees × 10^7 */
	RULE_MEDIUM,          /* [mediatype] 01 to 10, 80 to 99 */
	RULE_NOT_ZERO,        /* [nonzero] */
	RULE_NO_ZERO_FIRST,   /* [nozeroprefix] */
	RULE_PACKAGE,         /* [packagetype] */
	RULE_PERCENT,         /* [pcenc] '%' only before two hexadecimal digits */
	RULE_PIECE,           /* [pieceoftotal] piece 2 of 3 as 0203 */
	RULE_PLACE_IN_ORDER,  /* [posinseqslash] the second born of three: 2/3 */
	RULE_WINDING,         /* [winding] 0, 1 or 9 */
	RULE_YES_NO,          /* [yesno] 0 or 1 */
	RULE_ZERO,            /* [zero] */
	RULE_SOME_LETTER,     /* [hasnondigit] */
	RULE_COUPON,          /* [couponcode] North American coupon */
	RULE_COUPON_OFFER,    /* [couponposoffer] */
};

/* 0, or -EINVAL with what is wrong: fault->at within the value, fault->why the reason alone. `today` for the
 * century of dates. */
int gs1_rule_check(enum gs1_rule rule, const char *value, size_t size, int32_t today,
                   struct code_fault *fault);

/* gs1-lists.c: the lists that the rules rest on. */
bool gs1_is_country(const char *digits);            /* three digits of ISO 3166-1 */
bool gs1_is_country_letters(const char *pair);      /* two letters of ISO 3166-1 */
bool gs1_is_currency(const char *digits);           /* three digits of ISO 4217 */
bool gs1_is_package(const char *text, size_t size); /* UNECE Recommendation 21 and GS1's additions */

#endif
