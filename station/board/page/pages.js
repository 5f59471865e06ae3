// What does not fit on the wall is shown by turns, whole lines at a time, and says so.
import { deep, el } from './dom.js';
import { t } from './words.js';

const TURN_MS = 6000;

// While the final count goes on, what is accounted for becomes one line, so that what is not has the place.
function brief(box, parts) {
	const done = parts.filter((p) => p.matches('.accounted'));
	if (box.dataset.counting !== 'yes' || done.length < 2)
		return parts;
	const sum = (i) => done.reduce((n, p) => n + Number(p.cells[i].textContent), 0);
	const one = el('tr', { class: 'line pinned' }, el('th', { scope: 'row' }, t('and-lines', { n: done.length })), el('td', {}, `${sum(1)}`), el('td', {}, `${sum(2)}`));
	done.at(-1).after(one);
	done.forEach((p) => p.remove());
	return parts.filter((p) => !done.includes(p));
}

export function turn(box, flows) {
	const fits = () => flows || box.scrollHeight <= box.clientHeight + 1;
	let parts = [...box.querySelectorAll('tbody > tr:not(.pinned), .steps > li')];
	parts.forEach((p) => { p.hidden = false; });
	if (!parts.length || fits())
		return;
	parts = brief(box, parts);
	if (!parts.length || fits())
		return;
	const head = box.querySelector('thead .name, h2 > span:last-child'), sign = el('span', { class: 'turns' });
	head?.append(sign);
	const columns = Number(getComputedStyle(parts[0].parentNode).columnCount) || 1, heights = parts.map((p) => p.offsetHeight / columns);
	parts.forEach((p) => { p.hidden = true; });
	const room = box.clientHeight + 1 - deep(box) - (columns > 1 ? Math.max(...heights) : 0), pages = [[]]; // columns differ by a line at most
	if (room < heights[0] * columns)
		return;
	let used = 0;
	parts.forEach((p, i) => {
		if (used + heights[i] > room && pages.at(-1).length) {
			pages.push([]);
			used = 0;
		}
		pages.at(-1).push(p);
		used += heights[i];
	});
	// The step that is due, or the point that holds, stays in view; a plain sheet goes by turns.
	const due = pages.findIndex((page) => page.some((p) => p.matches('li.here, li.missing')));
	const i = due >= 0 ? due : Math.floor(performance.now() / TURN_MS) % pages.length;
	parts.forEach((p) => { p.hidden = !pages[i].includes(p); });
	sign.textContent = pages.length > 1 && due < 0 ? ` ${i + 1}/${pages.length}` : '';
}
