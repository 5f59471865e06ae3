// Check digits, tested while a code is typed. Ours by ISO/IEC 7064 MOD 97-10, as the station's own codes have it;
// GTINs by the GS1 General Specifications, modulo 10.
const lengths = { 1: 12, 2: 11, 3: 13, 4: 24, 5: 16, 6: 9, 7: 13 };
const earlier = { 4: 16, 5: 14 }; // without the station, and a slip's six digits; none of the practice set (BX)

export function mod97(text) {
	let r = 0;
	for (const c of text)
		for (const d of String(parseInt(c, 36)))
			r = (r * 10 + +d) % 97;
	return r;
}

export function mod10(digits) {
	let sum = 0;
	[...digits].reverse().forEach((d, i) => { sum += +d * (i % 2 ? 3 : 1); });
	return sum % 10 === 0;
}

// What is to be said of it: a name of the page's sentences, and its values.
const say = (state, name, values) => ({ state, name, values });

// A card that fits now is called by what it says.
const called = (code, cards) => (code[4] === '1' && cards.find((c) => c.number === +code.slice(7, 10))?.words) || '';
const kind = (code, words) => code[1] === 'X' ? { what: 'board-code-practice' } : ({ what: `board-code-${code[4]}${words ? '-named' : ''}`, words });

function ours(code, whole, before, values) {
	if (code.length === before && mod97(code) === 1)
		return say('right', 'judged-earlier', values);
	if (code.length < whole)
		return say('part', 'judged-short', { ...values, n: whole - code.length });
	if (code.length > whole)
		return say('wrong', 'judged-long', { ...values, n: code.length - whole });
	return mod97(code) === 1 ? say('right', 'judged-right', values) : say('wrong', 'judged-wrong', values);
}

// state: empty, part (go on), right, wrong (do not send), unknown (has no check digit that is known here)
// `cards`: those that fit now.
export function judge(typed, free, cards = []) {
	const code = typed.trim().toUpperCase();
	if (!code)
		return say('empty', 'judged-none');
	if (free)
		return say('unknown', 'judged-free');
	if (/^B[TX]?$|^B[TX][A-Z]{1,2}$/.test(code))
		return say('part', 'judged-ours');
	if (/^B[TX][A-Z]{2}[1-7]\d*$/.test(code))
		return ours(code, lengths[code[4]], code[1] === 'T' && earlier[code[4]], kind(code, called(code, cards)));
	if (/^[PR][A-Z]{2}\d*$/.test(code))
		return ours(code, 15, 13, { what: 'board-code-item' });
	if (/^\d+$/.test(code)) {
		if ([8, 12, 13, 14].includes(code.length))
			return mod10(code) ? say('right', 'trade-right') :
				code.length === 14 ? say('wrong', 'trade-wrong') : say('part', 'trade-part');
		return code.length < 14 ? say('part', 'trade-digits', { n: code.length }) : say('unknown', 'no-check');
	}
	return say('unknown', 'no-check-read');
}
