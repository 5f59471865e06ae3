// Check digits, tested while a code is typed. Ours by ISO/IEC 7064 MOD 97-10, as the station's own codes have it;
// GTINs by the GS1 General Specifications, modulo 10.
const lengths = { 1: 12, 2: 11, 3: 13, 4: 24, 5: 16, 6: 9, 7: 13 };
const earlier = { 4: 16, 5: 14 }; // without the station, and a slip's six digits
const names = { 1: 'card', 2: 'digit card', 3: 'badge', 4: 'slip', 5: 'case label', 6: 'scanner check', 7: 'tray' };

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

const say = (state, text) => ({ state, text });

// A card that fits now is called by what it says.
const called = (code, cards) => (code[4] === '1' && cards.find((c) => c.number === +code.slice(7, 10))?.words) || '';

function ours(code, whole, before, name) {
	if (code.length === before && mod97(code) === 1)
		return say('right', `${name} of an earlier version: check digits agree`);
	if (code.length < whole)
		return say('part', `${name}: ${whole - code.length} more`);
	if (code.length > whole)
		return say('wrong', `${name}: ${code.length - whole} too many`);
	return mod97(code) === 1 ? say('right', `${name}: check digits agree`) : say('wrong', `${name}: check digits do not agree. Look again.`);
}

// state: empty, part (go on), right, wrong (do not send), unknown (has no check digit that is known here)
// `cards`: those that fit now.
export function judge(typed, free, cards = []) {
	const code = typed.trim().toUpperCase();
	if (!code)
		return say('empty', 'Type what stands under the barcode.');
	if (free)
		return say('unknown', 'Free text: read it again before it is sent.');
	if (/^BT?$|^BT[A-Z]{1,2}$/.test(code))
		return say('part', 'A code of ours: go on.');
	if (/^BT[A-Z]{2}[1-7]\d*$/.test(code))
		return ours(code, lengths[code[4]], earlier[code[4]], [names[code[4]], called(code, cards)].filter(Boolean).join(' '));
	if (/^[PR][A-Z]{2}\d*$/.test(code))
		return ours(code, 15, 13, 'item label');
	if (/^\d+$/.test(code)) {
		if ([8, 12, 13, 14].includes(code.length))
			return mod10(code) ? say('right', 'Trade item number: check digit agrees') :
				code.length === 14 ? say('wrong', 'The check digit does not agree. Look again.') : say('part', 'Not whole yet, or mistyped.');
		return code.length < 14 ? say('part', `${code.length} digits`) : say('unknown', 'No check digit is known for this.');
	}
	return say('unknown', 'No check digit is known for this. Read it again.');
}
