// Hands and feet seen from the back (from above), drawn by lines of our own: the left always on the left. Each
// limb stands in a box of 100 by 124; y runs down. The tourniquet is a band across the root of its digit, the
// forceps hang on the band, and the minutes stand over the tip.
import { el, svg } from './dom.js';
import { digitWords, doubt } from './words.js';

const BOX = { w: 100, h: 124 }, room = 110; // the little finger's edge stands out of its box
// Right side, thumb or great toe first: root x, y, tip x, y, width.
const fingers = [
	[40, 98, 11, 63, 16.5], [39, 68, 30, 20, 14.5], [54.5, 64, 52.5, 9, 15], [70, 66, 75, 17, 14.5], [84, 74, 97, 39, 12.5],
];
const palm = 'M32 72C36 61 48 58 60 58C72 58 86 62 90 76C92 86 88 99 83 109C80 115 79 121 79 136L43 136C43 123 41 117 36 109C29 99 29 84 32 72Z';
const toes = [
	[31, 44, 29, 25, 23], [51, 39, 50, 21, 14.5], [65, 43, 67, 28, 13.5], [77, 50, 81, 37, 13], [87, 60, 93, 49, 12.5],
];
const sole = 'M19 48C26 38 42 38 55 40C72 42 90 52 94 66C97 78 88 92 84 104C81 114 80 122 80 134L36 134C37 118 34 106 27 92C20 78 15 60 19 48Z';

const limbs = {
	'left hand': { first: 6, lines: fingers, body: palm, flip: true },
	'right hand': { first: 1, lines: fingers, body: palm },
	'left foot': { first: 16, lines: toes, body: sole, flip: true },
	'right foot': { first: 11, lines: toes, body: sole },
};

const bar = (x1, y1, x2, y2, width, cls) =>
	svg('path', { d: `M${x1} ${y1}L${x2} ${y2}`, 'stroke-width': width, class: cls });

function along([x1, y1, x2, y2], t) {
	return [x1 + (x2 - x1) * t, y1 + (y2 - y1) * t];
}

// A stroke across the digit at part t of its length.
function across(line, t, width, cls, thick) {
	const [x, y] = along(line, t), length = Math.hypot(line[2] - line[0], line[3] - line[1]);
	const nx = -(line[3] - line[1]) / length * width / 2, ny = (line[2] - line[0]) / length * width / 2;
	return bar(x - nx, y - ny, x + nx, y + ny, thick, cls);
}

// Artery forceps: two rings, two shanks that cross, one beak; the beak lies on the band at 0, 0.
function forceps(x, y, angle) {
	const g = svg('g', { class: 'forceps', transform: `translate(${x} ${y}) rotate(${angle})` });
	for (const cls of ['under', 'over'])
		g.append(svg('path', { class: cls, d: 'M-3 0L18 2.2L34 -3.5M-3 0L18 -2.2L34 3.5' }),
			svg('circle', { class: cls, cx: 38.5, cy: -6, r: 5 }), svg('circle', { class: cls, cx: 38.5, cy: 6, r: 5 }));
	return g;
}

function drawLimb(limb, digits) {
	const g = svg('g', { class: 'limb' }), flip = svg('g', limb.flip ? { transform: `translate(${BOX.w} 0) scale(-1 1)` } : {});
	const state = limb.lines.map((_, i) => digits.find((d) => d.number === limb.first + i));
	for (const [cls, grow] of [['edge', 2.6], ['skin', 0]]) {
		flip.append(svg('path', { d: limb.body, class: cls, 'stroke-width': 4 + grow }));
		limb.lines.forEach(([a, b, c, d, w]) => flip.append(bar(a, b, c, d, w + grow, cls)));
	}
	limb.lines.forEach((l, i) => {
		const d = state[i], [nx, ny] = along(l, 1.06);
		if (d)
			flip.append(bar(...along(l, Math.min(0.98, 0.32 + l[4] / 2 / Math.hypot(l[2] - l[0], l[3] - l[1]))), l[2], l[3], l[4], `digit ${d.lost ? 'lost' : d.state}${d.seen_bare ? ' bare-seen' : ''}${d.marked ? ' marked' : ''}`));
		flip.append(svg('circle', { class: 'nail', cx: nx, cy: ny, r: l[4] * 0.24 }));
		if (d && (d.state === 'on' || d.state === 'maybe-on')) {
			flip.append(across(l, 0.3, l[4] + 7, 'band-edge', 10), across(l, 0.3, l[4] + 5, `band ${d.state}`, 6.5));
			if (d.forceps) {
				const [x, y] = along(l, 0.3), angle = Math.atan2(l[3] - l[1], l[2] - l[0]) * 180 / Math.PI;
				flip.append(forceps(x, y, angle + (i === 0 ? 150 : i < 2 ? 165 : i > 3 ? 205 : 182)));
			}
		} else if (d && d.state === 'off' && !d.seen_bare) {
			flip.append(across(l, 0.3, l[4] + 4, 'band-gone', 2.4));
		}
	});
	g.append(flip);
	return g;
}

// The limbs that are shown: hands, feet, or both, by the digits that the case knows.
function shown(digits) {
	const feet = digits.some((d) => d.number >= 11 && d.number <= 20), hands = digits.some((d) => d.number <= 10);
	return [...(hands || !feet ? ['left hand', 'right hand'] : []), ...(feet ? ['left foot', 'right foot'] : [])];
}

// From left to right: each word stands over its tip where it can; those that would touch move apart, or into a further
// row below, to the right of what leads down from the rows above. Where one must lie over a lead, it is counted.
function fromLeft(flags, width, gap) {
	const rows = [], leads = (rs) => Math.max(-gap, ...rs.flatMap((r) => r.flags.map((f) => f.lead)));
	let covered = 0;
	for (const f of flags) {
		const hidden = (i) => rows.slice(i + 1).some((r) => f.x < r.end + gap / 2);
		let i = rows.findIndex((r, k) => r.end + gap + f.w <= width && f.x >= r.end - f.w * 0.3 && !hidden(k));
		if (i < 0)
			i = rows.push({ end: -gap, flags: [] }) - 1;
		const above = leads(rows.slice(0, i)) + gap / 2, most = width - f.w;
		f.left = Math.min(Math.max(rows[i].end + gap, f.x - f.w / 2, above), most);
		f.lead = Math.min(Math.max(f.x, f.left + gap), f.left + f.w - gap);
		covered += f.left < above;
		rows[i].end = f.left + f.w;
		rows[i].flags.push(f);
	}
	return { rows, covered };
}

// The better of both directions: the words of little fingers at the right edge go the other way.
function placeFlags(flags, width, gap) {
	const sorted = [...flags].sort((a, b) => a.x - b.x), mirrored = sorted.map((f) => ({ of: f, x: width - f.x, w: f.w })).reverse();
	const one = fromLeft(sorted, width, gap), two = fromLeft(mirrored, width, gap);
	if (one.covered < two.covered || (one.covered === two.covered && one.rows.length <= two.rows.length))
		return one.rows;
	for (const m of mirrored)
		Object.assign(m.of, { left: width - m.left - m.w, lead: width - m.lead });
	return two.rows.map((r) => ({ flags: r.flags.map((m) => m.of) }));
}

// Why the tourniquet of a digit may still be there: it was not found, or is looked for again. '' where nothing says so.
function lost(view, number) {
	const open = view.items.filter((i) => i.role === 'tourniquet' && i.digit === number && i.place === 'off');
	return open.some((i) => i.missing > 0) ? 'missing' : open.length && view.case?.discrepancy ? 'counting again' : '';
}

// Draws into `box`. `passed_ms`: how long ago the view was made. Where four limbs would be too narrow to be named, or
// the place is tall, the feet stand under the hands.
export function drawFigure(box, view, passed_ms) {
	const digits = (view?.digits ?? []).map((d) => ({ ...d, lost: lost(view, d.number) })), names = shown(digits), rest = parseFloat(getComputedStyle(box).fontSize);
	if (names.length < 4 || (box.clientWidth / 4 > rest * 4.6 && box.clientHeight < box.clientWidth * 0.8))
		return void drawLimbs(box, digits, names, passed_ms);
	const feet = (d) => d.number >= 11 && d.number <= 20, halves = [el('div', { class: 'half' }), el('div', { class: 'half' })];
	box.replaceChildren(...halves);
	drawLimbs(halves[0], digits.filter((d) => !feet(d)), names.slice(0, 2), passed_ms);
	drawLimbs(halves[1], digits.filter(feet), names.slice(2), passed_ms);
}

function drawLimbs(box, digits, names, passed_ms) {
	const W = box.clientWidth, style = getComputedStyle(box);
	const main = parseFloat(getComputedStyle(document.getElementById('next')).fontSize);
	const rest = parseFloat(style.fontSize), H = box.clientHeight || W * 0.8;
	const root = svg('svg', { viewBox: `0 0 ${W} ${H}`, width: W, height: H, role: 'img' });
	root.append(svg('title', {}, describe(digits, passed_ms) || 'No digit has a tourniquet on this sheet'));
	if (!W || H < rest * 4)
		return;
	box.replaceChildren(root);
	const flags = digits.map((d) => ({ d, text: digitWords(d, passed_ms) })).filter((f) => f.text);
	for (const f of flags) {
		f.loud = (f.d.state === 'on' || f.d.state === 'maybe-on');
		// What belongs to the minutes but need not be as large stands over them.
		f.over = [f.d.number > 20 && f.d.name.replace(', described', ''), f.loud && doubt(f.d), f.d.lost].filter(Boolean).join(', ');
		f.node = svg('g', { class: `flag ${f.d.state}${f.d.lost ? ' lost' : ''}` });
		f.node.append(svg('text', {}, f.loud && doubt(f.d) ? f.text.replace(`${doubt(f.d)} `, '') : f.text));
		f.node.lastChild.style.fontSize = `${f.loud ? main : rest}px`;
		if (f.over)
			f.node.append(svg('text', { class: 'over', y: -(f.loud ? main : rest) * 0.95 }, f.over));
		root.append(f.node);
		f.w = Math.max(...[...f.node.children].map((t) => t.getComputedTextLength())) + rest * 0.4;
	}
	const column = W / names.length, rowH = main * 1.1, overH = flags.some((f) => f.over) ? rest * 1.05 : 0;
	let rows = [], scale = 1, kept = -1; // rows that room is kept for: where the limbs stand moves the words, and back
	const where = (n, s) => {
		const i = names.findIndex((x) => n >= limbs[x].first && n < limbs[x].first + 5);
		if (i < 0)
			return null;
		const limb = limbs[names[i]], l = limb.lines[n - limb.first], ox = column * i + (column - BOX.w * s) / 2;
		return [ox + (limb.flip ? BOX.w - l[2] : l[2]) * s, l[3], l[4] / 2];
	};
	while (kept < rows.length) {
		kept = rows.length;
		scale = Math.max(0.15, Math.min((H - kept * (rowH + overH) - rest * 1.25) / BOX.h, column * 0.98 / room));
		for (const f of flags)
			f.x = where(f.d.number, scale)?.[0] ?? W / 2;
		rows = placeFlags(flags, W, rest * 0.3);
	}
	const top = H - rest * 1.25 - BOX.h * scale;
	names.forEach((name, i) => {
		const ox = column * i + (column - BOX.w * scale) / 2;
		const g = drawLimb(limbs[name], digits);
		g.setAttribute('transform', `translate(${ox} ${top}) scale(${scale})`);
		const clip = svg('svg', { x: 0, y: 0, width: W, height: H - rest * 1.2 }, g);
		root.prepend(clip);
		const here = digits.some((d) => d.number >= limbs[name].first && d.number < limbs[name].first + 5);
		const side = svg('text', { class: here ? 'side here' : 'side', x: column * (i + 0.5), y: H - rest * 0.28 }, name);
		side.style.fontSize = `${rest}px`;
		root.append(side);
	});
	rows.forEach((row, r) => {
		const y = top - (rows.length - r - 1) * (rowH + overH) - rowH * 0.22;
		for (const f of row.flags) {
			const at = where(f.d.number, scale);
			f.node.setAttribute('transform', `translate(${f.left + f.w / 2} ${y})`);
			if (at)
				root.insertBefore(svg('path', { class: 'lead', d: `M${f.lead} ${y + rowH * 0.16}L${f.x} ${top + (at[1] - at[2]) * scale - 2}` }), f.node);
		}
	});
}

export function describe(digits, passed_ms) {
	return digits.map((d) => {
		const w = digitWords(d, passed_ms);
		return w && `${d.name}: ${d.state === 'on' ? 'tourniquet on, ' : ''}${w}${d.forceps ? ', forceps on it' : ''}${d.lost ? `, ${d.lost}` : ''}`;
	}).filter(Boolean).join('; ');
}
