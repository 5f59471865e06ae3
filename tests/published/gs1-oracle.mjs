// Our verdict on GS1 element strings equals that of bwip-js (npm, MIT), which has the GS1 rules of its own: labels
// as they are printed, and the same labels damaged in the ways in which labels and typists go wrong.
import { Tally, ask, bracketed, label, library, make, pick, random } from './oracle.mjs';

const bwip = (await library('bwip-js')).default;
const r = random(20260101);
const tally = new Tally();
const at = (s) => Math.floor(r() * s.length);
const change = (elements, i, v) => elements.map((e, k) => (k === i ? [e[0], v] : e));

const damage = {
	'another digit or letter': (e) => {
		const i = at(e), v = e[i][1], k = at(v);
		return change(e, i, v.slice(0, k) + pick(r, '0123456789AZaz') + v.slice(k + 1));
	},
	'a character lost': (e) => {
		const i = at(e), v = e[i][1], k = at(v);
		return change(e, i, v.slice(0, k) + v.slice(k + 1));
	},
	'a character too many': (e) => {
		const i = at(e), v = e[i][1], k = at(v);
		return change(e, i, v.slice(0, k) + pick(r, '0123456789AZ') + v.slice(k));
	},
	'neighbours swapped': (e) => {
		const i = at(e), v = e[i][1], k = Math.floor(r() * (v.length - 1));
		return change(e, i, v.slice(0, k) + (v[k + 1] ?? '') + v[k] + v.slice(k + 2));
	},
	'a character outside the set': (e) => {
		const i = at(e), v = e[i][1], k = at(v);
		return change(e, i, v.slice(0, k) + pick(r, '#$@[]{}|~ ') + v.slice(k + 1));
	},
	'an element left out': (e) => (e.length > 1 ? e.filter((_, k) => k !== 0) : e),
	'an element too many': (e) => {
		const ai = pick(r, Object.keys(make));
		return [...e, [ai, make[ai](r)]];
	},
	'an identifier nobody gave out': (e) => [...e, [pick(r, ['05', '23', '89', '3109', '7777', '9']), '123456']],
	'an empty value': (e) => change(e, at(e), ''),
	'much too long': (e) => change(e, at(e), 'A'.repeat(91)),
	'a month or day that does not exist': (e) => [...e, ['17', pick(r, ['271301', '270230', '270432', '270001'])]],
};

function verdict(text) {
	try {
		bwip.raw('gs1datamatrix', text, '');
		return '';
	} catch (e) {
		return String(e.message ?? e);
	}
}

const rows = [];
for (let n = 0; n < 300; n++)
	rows.push(['as printed', label(r)]);
for (const [name, how] of Object.entries(damage))
	for (let n = 0; n < 60; n++)
		rows.push([name, how(label(r))]);
const texts = rows.map(([, e]) => bracketed(e));
const answers = ask(texts);
const seen = {};
texts.forEach((text, i) => {
	const theirs = verdict(text), ours = answers[i];
	// A lot alone is half of a pair here, and an error there: the same verdict on the same fact.
	const good = ours.ok && ours.kind === 'gs1' && !ours.wants;
	const how = (seen[rows[i][0]] ??= { right: 0, wrong: 0 });
	how[theirs ? 'wrong' : 'right']++;
	if (good === !theirs)
		tally.pass();
	else if (theirs.includes('tooLong') || theirs.includes('TooLong') || theirs.includes('Maximum length exceeded'))
		tally.leave('too much for one Data Matrix symbol, which is no matter of the text');
	else if (!theirs && ours.why?.includes('company prefix'))
		tally.leave('fewer than 4 digits of company prefix: refused here as by the linters of GS1, bwip-js looks at 2');
	else
		tally.fail(`${rows[i][0]}: ${text}\n       theirs: ${theirs || 'right'}\n       ours: ${ours.why ?? ours.wants ?? ours.kind}`);
});
for (const [name, n] of Object.entries(seen))
	console.log(`  ${name}: ${n.right} right, ${n.wrong} wrong by bwip-js`);
tally.end(`GS1 element strings, ours and bwip-js ${bwip.BWIPJS_VERSION}`);
