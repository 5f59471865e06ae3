// Hands and feet from the back, those on which something is or was: the left always on the left. A limb's box is 100 by 124,
// y down; the tourniquet is a band at the root of its digit, the forceps hang on it.
import { svg } from './dom.js';
import { digitWords, runs, t } from './words.js';

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
	'left-hand': { first: 6, lines: fingers, body: palm, flip: true },
	'right-hand': { first: 1, lines: fingers, body: palm },
	'left-foot': { first: 16, lines: toes, body: sole, flip: true },
	'right-foot': { first: 11, lines: toes, body: sole },
};

const bar = (x1, y1, x2, y2, width, cls) =>
	svg('path', { d: `M${x1} ${y1}L${x2} ${y2}`, 'stroke-width': width, class: cls });

function along([x1, y1, x2, y2], part) {
	return [x1 + (x2 - x1) * part, y1 + (y2 - y1) * part];
}

// A stroke across the digit at a part of its length.
function across(line, part, width, cls, thick) {
	const [x, y] = along(line, part), length = Math.hypot(line[2] - line[0], line[3] - line[1]);
	const nx = -(line[3] - line[1]) / length * width / 2, ny = (line[2] - line[0]) / length * width / 2;
	return bar(x - nx, y - ny, x + nx, y + ny, thick, cls);
}

// Artery forceps: two rings, crossed shanks, one beak, on the band at 0, 0.
function forceps(x, y, angle) {
	const g = svg('g', { class: 'forceps', transform: `translate(${x} ${y}) rotate(${angle})` });
	for (const cls of ['under', 'over'])
		g.append(svg('path', { class: cls, d: 'M-3 0L18 2.2L34 -3.5M-3 0L18 -2.2L34 3.5' }),
			svg('circle', { class: cls, cx: 38.5, cy: -6, r: 5 }), svg('circle', { class: cls, cx: 38.5, cy: 6, r: 5 }));
	return g;
}

function drawDigit(flip, d, line, i) {
	flip.append(bar(...along(line, Math.min(0.98, 0.32 + line[4] / 2 / Math.hypot(line[2] - line[0], line[3] - line[1]))), line[2], line[3], line[4], `digit ${d.state}${d.seen_bare ? ' bare-seen' : ''}${d.marked ? ' marked' : ''}`));
	if (runs(d)) {
		flip.append(across(line, 0.3, line[4] + 7, 'band-edge', 10), across(line, 0.3, line[4] + 5, `band ${d.state}`, 6.5));
		if (d.forceps) {
			const [x, y] = along(line, 0.3), angle = Math.atan2(line[3] - line[1], line[2] - line[0]) * 180 / Math.PI;
			flip.append(forceps(x, y, angle + (i === 0 ? 150 : i < 2 ? 165 : i > 3 ? 205 : 182)));
		}
	} else if (d.state === 'off' && !d.seen_bare) {
		flip.append(across(line, 0.3, line[4] + 4, 'band-gone', 2.4));
	}
}

function drawLimb(limb, digits) {
	const g = svg('g', { class: 'limb' }), flip = svg('g', limb.flip ? { transform: `translate(${BOX.w} 0) scale(-1 1)` } : {});
	for (const [cls, grow] of [['edge', 2.6], ['skin', 0]]) {
		flip.append(svg('path', { d: limb.body, class: cls, 'stroke-width': 4 + grow }));
		limb.lines.forEach(([a, b, c, d, w]) => flip.append(bar(a, b, c, d, w + grow, cls)));
	}
	limb.lines.forEach((line, i) => {
		const d = digits.find((x) => x.number === limb.first + i), [nx, ny] = along(line, 1.06);
		const nail = svg('circle', { class: 'nail', cx: nx, cy: ny, r: line[4] * 0.24 });
		if (d)
			drawDigit(flip, d, line, i);
		flip.append(nail);
	});
	g.append(flip);
	return g;
}

const of = (limb, d) => d.number >= limb.first && d.number < limb.first + 5;
export const limbsOf = (digits) => Object.keys(limbs).filter((name) => digits.some((d) => of(limbs[name], d)));

// Into `box`: the limbs side by side, hands over feet where there are more than two.
export function drawFigure(box, view, passed_ms) {
	const style = getComputedStyle(box), digits = view?.digits ?? [], names = limbsOf(digits);
	const W = box.clientWidth, H = (box.clientHeight || W * 0.9) - parseFloat(style.paddingTop);
	if (!names.length || !W || H < 20)
		return void box.replaceChildren();
	const rest = parseFloat(style.fontSize), columns = names.length > 2 ? 2 : names.length, rows = Math.ceil(names.length / 2);
	const column = W / columns, high = H / rows, scale = Math.max(0.05, Math.min((high - rest * 1.3) / BOX.h, column * 0.98 / room));
	const root = svg('svg', { viewBox: `0 0 ${W} ${H}`, width: W, height: H, role: 'img' });
	root.append(svg('title', {}, describe(digits, passed_ms) || t('no-digit')));
	names.forEach((name, i) => {
		const x = column * (i % columns), low = high * (Math.floor(i / columns) + 1) - rest * 1.3;
		const g = drawLimb(limbs[name], digits);
		g.setAttribute('transform', `translate(${x + (column - BOX.w * scale) / 2} ${low - BOX.h * scale}) scale(${scale})`);
		root.append(svg('svg', { x: 0, y: 0, width: W, height: low }, g));
		const side = svg('text', { class: 'side', x: x + column / 2, y: low + rest }, t(name));
		side.style.fontSize = `${rest}px`;
		root.append(side);
	});
	box.replaceChildren(root);
	for (const side of root.querySelectorAll('.side')) // a longer name stands closer, as high as the others
		if (side.getComputedTextLength() > column * 0.96) {
			side.setAttribute('textLength', column * 0.96);
			side.setAttribute('lengthAdjust', 'spacingAndGlyphs');
		}
}

export function describe(digits, passed_ms) {
	return digits.map((d) => {
		const words = digitWords(d, passed_ms);
		return words && t(`told-${d.state === 'on' ? 'on' : 'digit'}${d.forceps ? '-forceps' : ''}`, { digit: d.number, words });
	}).filter(Boolean).join('; ');
}
