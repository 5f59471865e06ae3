// Runs inside the page: which texts lie on each other, and which do not fit their place or the screen.
export function stands() {
	const out = [], found = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let t = walk.nextNode(); t; t = walk.nextNode()) {
		const e = t.parentElement, range = document.createRange();
		range.selectNodeContents(t);
		if (!t.data.trim() || !e.checkVisibility({ visibilityProperty: true, opacityProperty: true }) || /^(SCRIPT|STYLE|TITLE|OPTION)$/.test(e.tagName) || e.closest('#foot button'))
			continue;
		for (const box of range.getClientRects()) // a line each
			if (box.width > 2 && box.height > 2)
				found.push({ t, e, text: t.data.trim().slice(0, 60), box });
	}
	found.forEach(({ t, text, box }, i) => found.slice(i + 1).forEach((u) => {
		const across = Math.min(box.right, u.box.right) - Math.max(box.left, u.box.left), down = Math.min(box.bottom, u.box.bottom) - Math.max(box.top, u.box.top);
		if (u.t !== t && across > 3 && down > Math.min(box.height, u.box.height) * 0.35)
			out.push(`'${text}' and '${u.text}' lie on each other`);
	}));
	for (const { e, text, box } of found) {
		const scrolls = e.closest('.wide'), place = e.closest('button, th, td, label, h1, h2, h3, p, li')?.getBoundingClientRect();
		if (!scrolls && (box.left < -1 || box.right > innerWidth + 1))
			out.push(`'${text}' leaves the screen`);
		if (place && (box.left < place.left - 1 || box.right > place.right + 1 || box.bottom > place.bottom + 2 || box.top < place.top - 2))
			out.push(`'${text}' is larger than its place`);
	}
	return { out, texts: found.map((f) => f.text) };
}
