// An outside witness for the seal (npm's jose), both ways.
//   node jws.mjs PUBLIC-FILE JWS             verifies it and prints the payload: exit 0 right, 3 not
//   node jws.mjs --sign SEED-FILE PUBLIC-FILE JWS [alg]   signs the payload of JWS anew, with the key whose 32 bytes of seed the
//                                            file holds, or with a fresh one where it is '-', and prints the JWS; with 'none' it bears no signature
// 77 where jose is not installed.
import { readFileSync } from 'node:fs';
let jose;
try {
	jose = await import('jose');
} catch {
	console.log("skipped: npm's jose is not installed in tests/node_modules");
	process.exit(77);
}
const words = process.argv.slice(2);

async function sign(seed, file, jws, alg) {
	const payload = jose.base64url.decode(jws.split('.')[1]), own = JSON.parse(readFileSync(file, 'utf8')).keys[0];
	if (alg === 'none')
		return `${jose.base64url.encode(JSON.stringify({ alg: 'none', kid: own.kid }))}.${jws.split('.')[1]}.`;
	const key = seed === '-' ? (await jose.generateKeyPair('EdDSA', { crv: 'Ed25519' })).privateKey
		: await jose.importJWK({ kty: 'OKP', crv: 'Ed25519', x: own.x, d: jose.base64url.encode(readFileSync(seed)) }, 'EdDSA');
	return new jose.CompactSign(payload).setProtectedHeader({ alg: 'EdDSA', kid: own.kid, typ: 'JWT' }).sign(key);
}

if (words[0] === '--sign') {
	process.stdout.write(await sign(...words.slice(1)));
	process.exit(0);
}
const [file, jws] = words;
const keys = jose.createLocalJWKSet(JSON.parse(readFileSync(file, 'utf8')));
try {
	const { payload } = await jose.compactVerify(jws, keys, { algorithms: ['EdDSA'] });
	process.stdout.write(new TextDecoder().decode(payload));
} catch (e) {
	console.log(e.code ?? e.message);
	process.exit(3);
}
