// One small shape for each state, so that it is told by word and form before colour.
import { svg } from './dom.js';

const P = {
	in: 'M4 4h16v16H4z',
	on: 'M12 3a9 9 0 1 0 .01 0zM2 12h20',
	off: 'M12 3a9 9 0 1 0 .01 0zM12 3a9 9 0 0 0 0 18z',
	accounted: 'M4 4h16v16H4zM8 12.5l3 3.5 6-8',
	missing: 'M12 2 23 21H1zM12 8v6M12 17v1.6',
	extra: 'M12 3v18M3 12h18',
	away: 'M4 4h16v16H4zM4 20 20 4',
	accepted: 'M3 12h14M12 6l6 6-6 6',
	refused: 'M7.5 2h9l5.5 5.5v9L16.5 22h-9L2 16.5v-9zM6.5 12h11',
	question: 'M12 1 23 12 12 23 1 12zM9 10a3 3 0 1 1 4.4 2.7c-1 .6-1.4 1-1.4 2M12 17v1',
	reminder: 'M5 17h14l-2-3V9a5 5 0 0 0-10 0v5zM10 20.5h4M12 1.5V4',
	fault: 'M12 2 23 21H1zM12 8v6M12 17v1.6',
	owed: 'M4 21h16M5 17l1-4L16 3l3 3L9 16z',
	slip: 'M6 2h12v20l-3-2-3 2-3-2-3 2zM9 7h6M9 11h6',
	done: 'M4 4h16v16H4zM4 4h16v16H4z',
	open: 'M4 4h16v16H4z',
	here: 'M3 12h14M12 5l7 7-7 7',
	keys: 'M1 5h22v14H1zM5 9.5h1M9.5 9.5h1M14 9.5h1M18.5 9.5h1M5 14.5h1M9 14.5h6M18.5 14.5h1',
	light: 'M12 2v3M12 19v3M2 12h3M19 12h3M5 5l2 2M17 17l2 2M5 19l2-2M17 7l2-2M12 8a4 4 0 1 0 .01 0z',
	team: 'M8 4a3.5 3.5 0 1 0 .01 0zM1.5 20c0-9 13-9 13 0zM17 6a3 3 0 1 0 .01 0zM17 13c4 0 5.5 3 5.5 7h-4',
	agreed: 'M3 13l5 5L21 5',
	quiet: 'M3 9h4l5-5v16l-5-5H3zM16 10v4',
};
const filled = new Set(['on', 'off', 'done']);

export function shape(name) {
	const s = svg('svg', { class: `shape ${name}`, viewBox: '0 0 24 24', 'aria-hidden': 'true' });
	if (name === 'off')
		s.append(svg('path', { d: 'M12 3a9 9 0 1 0 .01 0z' }), svg('path', { d: 'M12 3a9 9 0 0 0 0 18z', class: 'full' }));
	else if (name === 'on')
		s.append(svg('path', { d: 'M12 3a9 9 0 1 0 .01 0z', class: 'full' }), svg('path', { d: 'M2 12h20', class: 'bar' }));
	else
		s.append(svg('path', { d: P[name] ?? P.open, class: filled.has(name) ? 'full' : '' }));
	return s;
}

// Strokes in fives, as on paper.
export function tally(n) {
	const most = 20, shown = Math.min(n, most), groups = Math.ceil(shown / 5);
	const s = svg('svg', { class: 'tally', viewBox: `0 0 ${Math.max(1, groups * 30)} 24`, 'aria-hidden': 'true' });
	for (let g = 0; g < groups; g++) {
		const here = Math.min(5, shown - g * 5);
		for (let i = 0; i < Math.min(here, 4); i++)
			s.append(svg('path', { d: `M${g * 30 + 4 + i * 6} 3l-1 18` }));
		if (here === 5)
			s.append(svg('path', { d: `M${g * 30} 17l25-10` }));
	}
	return s;
}
