#include "drivers/zxing.h"

#include <cerrno>
#include <cstring>
#include <new>
#include <string>

#define ZX_USE_UTF8 1
#include <ZXing/ReadBarcode.h>

using namespace ZXing;

namespace
{

struct kind {
	enum symbology symbology;
	BarcodeFormats formats;
};

const struct kind kinds[] = {
    {SYMBOLOGY_EAN, BarcodeFormat::EAN13 | BarcodeFormat::UPCA | BarcodeFormat::UPCE},
    {SYMBOLOGY_EAN8, BarcodeFormat::EAN8},
    {SYMBOLOGY_CODE128, BarcodeFormat::Code128},
    {SYMBOLOGY_QR, BarcodeFormat::QRCode},
    {SYMBOLOGY_DATAMATRIX, BarcodeFormat::DataMatrix},
    {SYMBOLOGY_ITF, BarcodeFormat::ITF},
    {SYMBOLOGY_CODE39, BarcodeFormat::Code39},
    {SYMBOLOGY_CODABAR, BarcodeFormat::Codabar},
    {SYMBOLOGY_DATABAR, BarcodeFormat::DataBar},
    {SYMBOLOGY_DATABAR_EXPANDED, BarcodeFormat::DataBarExpanded},
};

BarcodeFormats formats_of(symbology_set wanted)
{
	BarcodeFormats all;
	for (const auto &k : kinds)
		if (wanted & SYMBOLOGY_BIT(k.symbology))
			all = all | k.formats;
	return all;
}

/* UPC-E to UPC-A, GS1 General Specifications, zero-suppressed GTIN-12. */
std::string expand_upce(const std::string &s)
{
	std::string d = s.substr(1, 6), out = s.substr(0, 1);
	switch (d[5]) {
	case '0':
	case '1':
	case '2':
		out += d.substr(0, 2) + d[5] + "0000" + d.substr(2, 3);
		break;
	case '3':
		out += d.substr(0, 3) + "00000" + d.substr(3, 2);
		break;
	case '4':
		out += d.substr(0, 4) + "00000" + d.substr(4, 1);
		break;
	default:
		out += d.substr(0, 5) + "0000" + d.substr(5, 1);
	}
	return out + s.substr(7);
}

std::string data_of(const Result &r)
{
	std::string s(reinterpret_cast<const char *>(r.bytes().data()), r.bytes().size());
	if (r.format() == BarcodeFormat::UPCE && s.size() == 8)
		s = expand_upce(s);
	if ((r.format() == BarcodeFormat::UPCA || r.format() == BarcodeFormat::UPCE) && s.size() == 12)
		s = "0" + s;
	if (r.format() == BarcodeFormat::DataBarExpanded || r.format() == BarcodeFormat::DataBar) {
		/* This version writes element strings with brackets. */
		std::string plain;
		for (char c : s)
			if (c != '(' && c != ')')
				plain += c;
		s = plain;
	}
	return s;
}

/* The bytes come without ECI escapes, so the identifier is that of a reader which knows no ECI. */
std::string aim_of(const Result &r)
{
	std::string aim = r.symbologyIdentifier();
	if (aim.size() != WIRE_AIM_SIZE)
		return "";
	if (aim[1] == 'Q' && (aim[2] == '2' || aim[2] == '4' || aim[2] == '6'))
		aim[2] = static_cast<char>(aim[2] - 1);
	if (aim[1] == 'd' && aim[2] >= '4' && aim[2] <= '6')
		aim[2] = static_cast<char>(aim[2] - 3);
	return aim;
}

/* In a GS1 QR code a doubled '%' is a '%' and a single one FNC1. Where this version meets the doubled one in
 * alphanumeric mode it loses all that follows, and does not say so (libzint's "(10)A%B(21)7" gives "10A%").
 */
bool cut_off(const std::string &aim, const std::string &data)
{
	return (aim == "]Q3" || aim == "]Q5") && data.find('%') != std::string::npos;
}

int take(const Result &r, struct readings *out)
{
	std::string data = data_of(r), aim = aim_of(r);
	if (cut_off(aim, data) || data.size() > READING_DATA_MAX || out->count == READINGS_MAX)
		return 0;
	struct reading *to = &out->item[out->count];
	*to = {};
	for (const auto &k : kinds)
		if (k.formats.testFlag(r.format()))
			to->symbology = k.symbology;
	to->witness = WITNESS_ZXING;
	memcpy(to->aim, aim.c_str(), aim.size() + 1);
	memcpy(to->data, data.data(), data.size());
	to->size = data.size();
	for (size_t i = 0; i < 4; i++)
		to->corner[i] = {r.position()[i].x, r.position()[i].y};
	to->box = box_round(to->corner);
	to->times = 1;
	/* In Code 128 this version also says so where the check character has the number of FNC3. */
	to->in_part = r.isPartOfSequence() || (r.readerInit() && r.format() != BarcodeFormat::Code128);
	out->count++;
	return 1;
}

} // namespace

int zxing_read(const struct plane *p, symbology_set wanted, struct readings *out)
{
	try {
		DecodeHints hints;
		hints.setFormats(formats_of(wanted));
		hints.setMaxNumberOfSymbols(1);
		hints.setReturnCodabarStartEnd(true); /* as the first witness does */
		Result r = ReadBarcode(ImageView(p->pixels, p->width, p->height, ImageFormat::Lum), hints);
		return r.isValid() ? take(r, out) : 0;
	} catch (const std::bad_alloc &) {
		return -ENOMEM;
	} catch (...) {
		return 0; /* a picture that it cannot bear holds nothing that it could swear to */
	}
}
