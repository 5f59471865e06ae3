// Elements, and text that changes only where it differs: a screen reader hears news once.
export const $ = (id) => document.getElementById(id);

// A name with a number, 'CIRC-2', is not parted between two lines, nor from the comma behind it.
function whole(text) {
	return text.split(/(\p{L}[\p{L}\d]*-\d+[,;:.)]*)/u).map((part, i) => {
		if (i % 2 === 0)
			return part;
		const e = document.createElement('span');
		e.className = 'whole';
		e.textContent = part;
		return e;
	});
}
const nodes = (children) => children.flatMap((c) => (typeof c === 'string' ? whole(c) : c));

export function el(name, attributes = {}, ...children) {
	const e = document.createElement(name);
	for (const [k, v] of Object.entries(attributes))
		if (v !== false && v !== undefined)
			e.setAttribute(k, v === true ? '' : v);
	e.append(...nodes(children));
	return e;
}

export function svg(name, attributes = {}, ...children) {
	const e = document.createElementNS('http://www.w3.org/2000/svg', name);
	for (const [k, v] of Object.entries(attributes))
		e.setAttribute(k, v);
	e.append(...children);
	return e;
}

export function say(e, text) {
	if (e.textContent !== text)
		e.replaceChildren(...whole(text));
}

// Replaces what stands in `e` where it would look different.
export function put(e, ...children) {
	const now = el('div', {}, ...children);
	if (now.innerHTML !== e.innerHTML)
		e.replaceChildren(...now.childNodes);
}

// How high what stands in `box` is, whatever place it has.
export const deep = (box) => [...box.children].reduce((sum, e) => sum + e.offsetHeight, 0);
