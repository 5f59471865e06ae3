// What a person at the table could not read, of what measure.mjs found.

// States in which the next step has to be read from the table, whatever else there is.
const due = ['idle', 'counting-in', 'refused', 'question', 'maybe-on', 'off', 'look', 'reminder', 'on-fresh', 'discrepancy', 'who-looked', 'one-note'];

// While a tourniquet is on nothing is as large as its minutes.
function largest(m) {
	const clocks = m.found.filter((f) => f.clock).map((f) => f.mm), most = m.found.reduce((a, f) => (f.mm > a.mm && !f.clock ? f : a), { mm: 0 });
	return !clocks.length || Math.min(...clocks) > most.mm ? 'ok' : `'${most.text}' is as large as the minutes`;
}

// Everything that is wrong with how a scene stands on this screen.
export function wrongs(m, name) {
	const out = [];
	for (const t of m.found) {
		const least = m.flows ? 0 : t.main ? 17.45 : 11.64;
		if (t.mm < least)
			out.push(`${name}: '${t.text}' is ${t.mm.toFixed(2)} mm high, under ${least}`);
		if (m.flows && t.px < 12)
			out.push(`${name}: '${t.text}' is ${t.px} px high`);
		if (t.contrast < 7)
			out.push(`${name}: '${t.text}' has a contrast of ${t.contrast}`);
		if (t.right > m.width + 1 || t.left < -1 || (!m.flows && (t.bottom > m.height + 2 || t.top < -2)))
			out.push(`${name}: '${t.text}' leaves the screen (${[t.left, t.right, t.top, t.bottom].map(Math.round)})`);
	}
	const drawn = m.found.filter((t) => t.svg);
	drawn.forEach((t, i) => drawn.slice(i + 1).forEach((u) => {
		if (Math.min(t.right, u.right) - Math.max(t.left, u.left) > 3 && Math.min(t.bottom, u.bottom) - Math.max(t.top, u.top) > (t.bottom - t.top) * 0.35)
			out.push(`${name}: '${t.text}' and '${u.text}' lie on each other`);
	}));
	out.push(...m.drawn.map((d) => `${name}: ${d}`));
	if (m.cut.length)
		out.push(`${name}: ${m.cut} is wider than its place`);
	if (!m.flows && m.deep > 2)
		out.push(`${name}: the sheet, or the page, is ${m.deep} px deeper than its place`);
	if (!m.flows && due.includes(name) && !m.large)
		out.push(`${name}: the next step is written small`);
	if (!m.flows && largest(m) !== 'ok')
		out.push(`${name}: ${largest(m)}`);
	return out;
}
