// What the station tells in words, as a language of the tests would have it: half as long again with an accent on each vowel, or
// in letters that go from right to left. Names of people, rooms and things stay as people gave them.
const accents = { a: 'á', c: 'ç', e: 'é', i: 'í', n: 'ñ', o: 'ó', u: 'ú', y: 'ý', A: 'Á', C: 'Ç', E: 'É', I: 'Í', N: 'Ñ', O: 'Ó', U: 'Ú', Y: 'Ý' };
const hebrew = 'אבצדעפגהיגכלמנופקרסתוושחיז';
const letter = /[A-Za-z]/;
const makers = {
	// Four letters of ten are doubled, as words-pot --pseudo does.
	xx: (text) => { let n = 0; return [...text].map((c) => (accents[c] ?? c).repeat(letter.test(c) && n++ % 5 < 2 ? 2 : 1)).join(''); },
	he: (text) => [...text].map((c) => (letter.test(c) ? hebrew[c.toLowerCase().charCodeAt(0) - 97] : c)).join(''),
};

// A card has one name wherever it stands.
function said(text, cards, make) {
	if (!cards.length || !text)
		return make(text ?? '');
	const names = new RegExp(`(${cards.map((c) => c.replace(/[.*+?^${}()|[\]\\]/g, '\\$&')).sort((a, b) => b.length - a.length).join('|')})`);
	return text.split(names).map(make).join('');
}

export function spoken(view, code) {
	const make = makers[code], cards = view.cards.map((c) => c.words), say = (text) => said(text, cards, make);
	const all = (list, how) => list.map(how);
	return {
		...view, language: code, next: say(view.next), distrust: make(view.distrust), clock: make(view.clock),
		cards: all(view.cards, (c) => ({ ...c, words: make(c.words) })), deeds: all(view.deeds, (d) => ({ ...d, words: make(d.words), card: typeof d.card === 'string' ? make(d.card) : d.card })),
		digits: all(view.digits, (d) => ({ ...d, name: make(d.name), text: make(d.text) })), search: all(view.search, (s) => ({ ...s, text: make(s.text) })),
		points: all(view.points, make), recent: all(view.recent, (r) => ({ ...r, said: say(r.said) })), faults: all(view.faults, make),
	};
}
