#include "code/aim.h"

static const struct symbology {
	char letter;
	const char *name;
	const char *gs1; /* the modifiers that say GS1 */
} symbologies[] = {
    {'A', "Code 39", ""},
    {'B', "Telepen", ""},
    {'C', "Code 128", "1"},
    {'D', "Code One", "1"},
    {'E', "EAN/UPC", ""},
    {'F', "Codabar", ""},
    {'G', "Code 93", ""},
    {'H', "Code 11", ""},
    {'I', "Interleaved 2 of 5", ""},
    {'J', "DotCode", "14"},
    {'K', "Code 16K", "1"},
    {'L', "PDF417", ""},
    {'M', "MSI Code", ""},
    {'N', "Anker Code", ""},
    {'O', "Codablock", ""},
    {'P', "Plessey Code", ""},
    {'Q', "QR Code", "34"},
    {'R', "Straight 2 of 5", ""},
    {'S', "Straight 2 of 5", ""},
    {'T', "Code 49", "1"},
    {'U', "MaxiCode", ""},
    {'X', "another symbol", ""},
    {'Z', "keyboard", ""},
    {'c', "Channel Code", ""},
    {'d', "Data Matrix", "25"},
    {'e', "GS1 DataBar", "0"},
    {'h', "Han Xin Code", ""},
    {'o', "OCR", ""},
    {'p', "PosiCode", ""},
    {'s', "SuperCode", ""},
    {'u', "Ultracode", ""},
    {'z', "Aztec Code", "14"},
};

static enum aim_meaning ean(char modifier)
{
	switch (modifier) {
	case '1':
	case '2':
		return AIM_ADD_ON;
	case '3':
		return AIM_EAN_ADD_ON;
	case '4':
		return AIM_EAN_8;
	}
	return AIM_EAN;
}

static enum aim_meaning meaning_of(const struct symbology *s, char modifier)
{
	for (const char *p = s->gs1; *p; p++)
		if (*p == modifier)
			return AIM_GS1;
	switch (s->letter) {
	case 'A':
		return modifier == '4' || modifier == '5' || modifier == '7' ? AIM_FULL_ASCII : AIM_ANY;
	case 'E':
		return ean(modifier);
	case 'I':
		return modifier == '3' ? AIM_ITF_CUT : AIM_ITF;
	case 'Z':
		return AIM_KEYBOARD;
	}
	return AIM_ANY;
}

static bool is_modifier(char c)
{
	return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
}

bool aim_read(const char *text, size_t size, struct aim *out)
{
	*out = (struct aim){AIM_NONE, ""};
	if (size < 3 || text[0] != ']' || !is_modifier(text[2]))
		return false;
	for (size_t i = 0; i < sizeof symbologies / sizeof *symbologies; i++) {
		if (symbologies[i].letter != text[1])
			continue;
		*out = (struct aim){meaning_of(&symbologies[i], text[2]), symbologies[i].name};
		return true;
	}
	return false;
}
