// What the two node tests share: the table of element strings, a repeatable random, and asking our program.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export function skip(why) {
	console.log(`skipped: ${why}`);
	process.exit(77);
}

// npm's reference libraries; absent on a clone where 'npm ci' was not run in tests/.
export async function library(name) {
	try {
		return await import(name);
	} catch {
		return skip(`${name} is not installed: run 'npm ci' in tests/`);
	}
}

// mulberry32: the same numbers in every run.
export function random(seed) {
	return () => {
		seed = (seed + 0x6d2b79f5) | 0;
		let t = Math.imul(seed ^ (seed >>> 15), 1 | seed);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}

// One answer for each line, from `bandtally code --file --json` (argv[2] is the program and its first words).
export function ask(lines) {
	const folder = mkdtempSync(join(tmpdir(), 'code-'));
	try {
		writeFileSync(join(folder, 'lines'), lines.join('\n') + '\n', 'latin1');
		const out = execFileSync(process.argv[2], ['--file', join(folder, 'lines'), '--json'], { maxBuffer: 1 << 28 });
		const answers = out.toString().trimEnd().split('\n').map((line) => JSON.parse(line));
		if (answers.length !== lines.length)
			throw new Error(`${lines.length} lines, but ${answers.length} answers`);
		return answers;
	} finally {
		rmSync(folder, { recursive: true });
	}
}

// Passed, failed and left out, as in the C tests (shared.h).
export class Tally {
	passed = 0;
	failed = 0;
	groups = new Map();
	pass() {
		this.passed++;
	}
	fail(text) {
		if (this.failed++ < 20)
			console.log(`FAILED ${text}`);
	}
	leave(why) {
		this.groups.set(why, (this.groups.get(why) ?? 0) + 1);
	}
	end(name) {
		const left = [...this.groups.values()].reduce((a, b) => a + b, 0);
		console.log(`${name}: ${this.passed} passed, ${this.failed} failed, ${left} left out`);
		for (const [why, count] of this.groups)
			console.log(`  left out ${String(count).padStart(4)}: ${why}`);
		process.exit(this.failed || !this.passed ? 1 : 0);
	}
}

const digits = '0123456789';
const set82 = `!"%&'*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz`; // no brackets
const pick = (r, from) => from[Math.floor(r() * from.length)];
const many = (r, from, n) => Array.from({ length: n }, () => pick(r, from)).join('');
const upTo = (r, from, n) => many(r, from, 1 + Math.floor(r() * n));

export function mod10(body) {
	let sum = 0;
	[...body].reverse().forEach((d, i) => (sum += Number(d) * (i % 2 ? 1 : 3)));
	return String((10 - (sum % 10)) % 10);
}
const checked = (r, n) => {
	const body = many(r, digits, n - 1);
	return body + mod10(body);
};
const two = (n) => String(n).padStart(2, '0');
const yymmd0 = (r) => two(Math.floor(r() * 76)) + two(1 + Math.floor(r() * 12)) + two(Math.floor(r() * 29));
const yymmdd = (r) => two(Math.floor(r() * 76)) + two(1 + Math.floor(r() * 12)) + two(1 + Math.floor(r() * 28));

// How a right value of each identifier is made: written by hand from the General Specifications, not from our table.
export const make = {
	'00': (r) => checked(r, 18),
	'01': (r) => checked(r, 14),
	'02': (r) => checked(r, 14),
	10: (r) => upTo(r, set82, 20),
	11: yymmd0,
	15: yymmd0,
	17: yymmd0,
	20: (r) => many(r, digits, 2),
	21: (r) => upTo(r, set82, 20),
	22: (r) => upTo(r, set82, 20),
	240: (r) => upTo(r, set82, 30),
	241: (r) => upTo(r, set82, 30),
	250: (r) => upTo(r, set82, 30),
	253: (r) => checked(r, 13) + (r() < 0.5 ? upTo(r, set82, 17) : ''),
	30: (r) => upTo(r, digits, 8),
	3103: (r) => many(r, digits, 6),
	37: (r) => upTo(r, digits, 8),
	3920: (r) => upTo(r, digits, 15),
	400: (r) => upTo(r, set82, 30),
	401: (r) => many(r, digits, 8) + upTo(r, set82, 22),
	414: (r) => checked(r, 13),
	422: (r) => pick(r, ['004', '276', '756', '826', '894']),
	7003: (r) => yymmdd(r) + two(Math.floor(r() * 24)) + two(Math.floor(r() * 60)),
	8003: (r) => '0' + checked(r, 13) + (r() < 0.5 ? upTo(r, set82, 16) : ''),
	8004: (r) => many(r, digits, 8) + upTo(r, set82, 22),
	8006: (r) => {
		const total = 1 + Math.floor(r() * 99);
		return checked(r, 14) + two(1 + Math.floor(r() * total)) + two(total);
	},
	8008: (r) => yymmdd(r) + two(Math.floor(r() * 24)) + (r() < 0.5 ? two(Math.floor(r() * 60)) : ''),
	8017: (r) => checked(r, 18),
	8018: (r) => checked(r, 18),
	8019: (r) => upTo(r, digits, 10),
	8020: (r) => upTo(r, set82, 25),
	91: (r) => upTo(r, set82, 90),
	99: (r) => upTo(r, set82, 90),
};

// What goes together on a label.
export const labels = [
	['01'], ['01', '10'], ['01', '17', '10'], ['01', '17', '10', '21'], ['01', '11', '17', '10', '30'],
	['01', '21', '250'], ['01', '240'], ['01', '241', '10'], ['01', '20', '17'], ['01', '22', '10', '21'],
	['01', '7003', '10'], ['01', '15', '3103', '3920'], ['01', '3920', '30'], ['01', '422'], ['01', '8008', '21'],
	['00', '02', '37'], ['00'], ['253'], ['400'], ['401'], ['414'], ['8003'], ['8004'], ['8004', '91'],
	['8006', '21', '10'], ['8017'], ['8018', '8019'], ['91'], ['99', '91'], ['01', '99'],
];

export function label(r) {
	return pick(r, labels).map((ai) => [ai, make[ai](r)]);
}
export const bracketed = (elements) => elements.map(([ai, v]) => `(${ai})${v}`).join('');
export { pick };
