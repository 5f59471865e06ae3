/* Two symbols on one pack. */
#include <errno.h>
#include <stdio.h>
#include <string.h>

#include "code/code.h"
#include "code/gs1.h"

static bool is_gs1(const struct code *c)
{
	return c->kind == CODE_GS1 || c->kind == CODE_TRADE_ITEM;
}

static bool has(const struct code *c, const struct code_element *e)
{
	for (int i = 0; i < c->count; i++)
		if (!strcmp(c->elements[i].ai, e->ai) && !strcmp(c->elements[i].value, e->value))
			return true;
	return false;
}

static int add_elements(struct code *to, const struct code *from, struct code_fault *f)
{
	for (int i = 0; i < from->count; i++) {
		if (has(to, &from->elements[i]))
			continue;
		if (to->count == CODE_ELEMENTS_MAX)
			return fault_set(
			    f, 0, "the two codes have more than %d elements: enter the pack by one of them",
			    CODE_ELEMENTS_MAX);
		to->elements[to->count++] = from->elements[i];
	}
	return 0;
}

static int text_field(char *to, size_t room, const char *from, const char *what, struct code_fault *f)
{
	if (to[0] && from[0] && strcmp(to, from))
		return fault_set(
		    f, 0,
		    "the two codes give different %s, %.30s and %.30s: are both of this pack? Scan again",
		    what, to, from);
	if (from[0])
		snprintf(to, room, "%s", from);
	return 0;
}

static int date_field(int32_t *to, int32_t from, const char *what, struct code_fault *f)
{
	if (*to && from && *to != from)
		return fault_set(
		    f, 0, "the two codes give different %s, %d and %d: are both of this pack? Scan again",
		    what, *to, from);
	if (from)
		*to = from;
	return 0;
}

/* The first contradiction wins. */
static int add_fields(struct code *to, const struct code *from, struct code_fault *f)
{
	int r = text_field(to->product, sizeof to->product, from->product, "products", f);
	r = r ? r : text_field(to->lot, sizeof to->lot, from->lot, "lots", f);
	r = r ? r : text_field(to->serial, sizeof to->serial, from->serial, "serial numbers", f);
	r = r ? r : text_field(to->giai, sizeof to->giai, from->giai, "assets", f);
	r = r ? r : text_field(to->grai, sizeof to->grai, from->grai, "returnable assets", f);
	r = r ? r : text_field(to->gsrn, sizeof to->gsrn, from->gsrn, "people", f);
	r = r ? r : date_field(&to->expiry, from->expiry, "use-by dates", f);
	r = r ? r : date_field(&to->made, from->made, "dates of making", f);
	if (r < 0)
		return r;
	to->expiry_hh = to->expiry_hh ? to->expiry_hh : from->expiry_hh;
	to->quantity = to->quantity ? to->quantity : from->quantity;
	to->patient = to->patient || from->patient;
	return 0;
}

/* A secondary belongs to the primary whose check character is its link; two secondaries need the same link.
 */
static int links(const struct code *a, const struct code *b, struct code_fault *f)
{
	char one = a->check ? a->check : a->link, two = b->check ? b->check : b->link;
	if (a->check && b->check)
		return fault_set(
		    f, 0, "both codes are primaries, of one product each: scan the other code of this pack");
	if (!one || !two)
		return fault_set(f, 0,
		                 "one of the codes says everything already: the other is not of this pack");
	if (one != two)
		return fault_set(f, 0,
		                 "the link character is '%c' and should be '%c', so these are codes of two "
		                 "packs: scan both "
		                 "codes of one pack",
		                 a->check ? two : one, a->check ? one : two);
	return 0;
}

int code_join(struct code *first, const struct code *second, struct code_fault *fault)
{
	struct code both = *first;
	int r;
	if (first->kind == CODE_HIBC && second->kind == CODE_HIBC)
		r = links(first, second, fault);
	else if (is_gs1(first) && is_gs1(second))
		r = 0;
	else
		return fault_set(
		    fault, 0, "a %s code and a %s code cannot be halves of one: scan both codes of this pack",
		    code_kind_name(first->kind), code_kind_name(second->kind));
	if (r == 0)
		r = add_fields(&both, second, fault);
	if (r == 0)
		r = add_elements(&both, second, fault);
	if (r == 0 && is_gs1(first))
		r = gs1_pairs(&both, fault);
	if (r < 0)
		return r;
	if (first->kind == CODE_HIBC) {
		both.check = first->check ? first->check : second->check;
		both.link = both.check ? '\0' : first->link;
		if (both.check)
			both.wants[0] = '\0';
	} else {
		if (both.count > 1)
			both.kind = CODE_GS1;
		gs1_wants(&both, both.wants, sizeof both.wants);
	}
	*first = both;
	return 0;
}
