// Runs inside the page: how high the letters stand, in mm of a 24-inch screen, and how they contrast with what lies
// under them. A capital's height is measured by drawing an H in the same font.
export function measure() {
	const diagonal = Math.hypot(innerWidth, innerHeight), mm = 24 * 25.4 / diagonal;
	const pen = document.createElement('canvas').getContext('2d');
	const linear = (c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
	const rgb = (text) => (text.match(/[\d.]+/g) ?? []).map(Number);
	const light = ([r, g, b]) => 0.2126 * linear(r / 255) + 0.7152 * linear(g / 255) + 0.0722 * linear(b / 255);
	const under = (e) => {
		for (let at = e; at; at = at.parentElement) {
			const c = rgb(getComputedStyle(at).backgroundColor);
			if (c.length === 3 || c[3] === 1)
				return c;
		}
		return [255, 255, 255];
	};
	// The next step, where it is due: not one that has stood for a while, nor where a long reply needs its place.
	const gone = document.documentElement.dataset.gone.split(' '), large = document.getElementById('now').dataset.stands === 'no' && !gone.includes('next');
	const found = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let t = walk.nextNode(); t; t = walk.nextNode()) {
		const e = t.parentElement, style = getComputedStyle(e);
		const range = document.createRange();
		range.selectNodeContents(t);
		const box = range.getBoundingClientRect();
		if (!t.data.trim() || !e.checkVisibility({ visibilityProperty: true, opacityProperty: true }) || box.width < 2 || box.height < 2 ||
			/^(SCRIPT|STYLE|TITLE)$/i.test(e.tagName) || e.closest('#foot button'))
			continue;
		// Drawn twenty times as large: the measure comes in whole points.
		pen.font = `${style.fontWeight} ${parseFloat(style.fontSize) * 20}px ${style.fontFamily}`;
		const capital = pen.measureText('H').actualBoundingBoxAscent / 20, svg = e.closest('svg');
		const a = light(rgb(svg ? style.fill : style.color)), b = light(under(svg ?? e));
		const contrast = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
		found.push({
			text: t.data.trim().slice(0, 60), mm: capital * mm, px: capital, contrast: Math.round(contrast * 100) / 100,
			main: !!e.closest('.number, #shout .word, #done') || (!!e.closest('#next') && large),
			left: box.left, right: box.right, top: box.top, bottom: box.bottom, svg: !!svg, id: e.closest('[id]')?.id, clock: !!e.closest('.number'),
		});
	}
	const cut = [...document.querySelectorAll('#words, #sheet, #note, #strip, #shout, #clocks, #foot, #main')].filter((b) => b.checkVisibility() && b.scrollWidth > b.clientWidth + 1).map((b) => b.id);
	const sheet = document.getElementById('sheet'), deep = sheet.scrollHeight - sheet.clientHeight;
	// What the drawing must not do: leave its place.
	const drawn = [], box = (e) => e.getBoundingClientRect(), place = box(document.getElementById('figure'));
	for (const edge of place.width ? document.querySelectorAll('#figure .limb .edge') : []) {
		const half = edge.getAttribute('stroke-width') / 2 * Math.abs(edge.getScreenCTM().a); // a box knows nothing of strokes
		if (box(edge).left - half < place.left || box(edge).right + half > place.right)
			drawn.push('a digit is cut off at the side');
	}
	const main = document.getElementById('main');
	return { found, cut, drawn, deep: Math.max(deep, main.scrollHeight - main.clientHeight), large, sheet: sheet.clientHeight > 0, width: innerWidth, height: innerHeight, flows: getComputedStyle(document.documentElement).getPropertyValue('--flows').trim() === '1' };
}
