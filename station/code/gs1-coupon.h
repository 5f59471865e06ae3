/* The two coupon values of North America, (8110) and (8112): nested fields, most behind a digit that gives
 * their length. No operating room sees them, but a symbol that carries one beside a product must still be
 * judged. Source: GS1 US, North American Coupon Application Guideline, as the linters of the GS1 dictionary
 * have it. */
#ifndef BANDTALLY_CODE_GS1_COUPON_H
#define BANDTALLY_CODE_GS1_COUPON_H

#include <stddef.h>
#include <stdint.h>

#include "code/fault.h"

/* (8110), and (8112) for an offer that is looked up: 0, or -EINVAL with what is wrong and where. `today` for the century of
 * dates. */
int gs1_coupon(const char *value, size_t size, int32_t today, struct code_fault *fault);
int gs1_coupon_offer(const char *value, size_t size, struct code_fault *fault);

#endif
