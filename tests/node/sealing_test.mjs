// Sealed results: HPKE against the vectors of RFC 9180 and against another implementation in both directions;
// one bit changed anywhere in an envelope is always refused; the key file keeps what it promises.
import './support/browser_globals.mjs';
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, test } from 'node:test';
import Ajv from 'ajv';
import * as other from 'hpke';
import { bundled, root } from '../bundled.mjs';

const { open, seal, suite } = await bundled('seal.js');
const { services, unlockWith } = await bundled('sealing.js');
const { KeyFileError, makeKeyFile, openKeyFile, readKeyFile } = await bundled('key_file.js');
const { fromBase64url, toBase64url } = await bundled('base64url.js');

const hex = (text) => new Uint8Array(Buffer.from(text, 'hex'));
const text = (bytes) => Buffer.from(bytes).toString('hex');
const k_vector = JSON.parse(readFileSync(path.join(root, 'tests/fixtures/hpke/rfc9180-a3-base.json'), 'utf8'));
const k_curve = { name: 'ECDH', namedCurve: 'P-256' };
const k_words = new TextEncoder();
const k_fast = 1000;  // iterations, where the passphrase is not what is tried

async function someKeys() {
  const keys = await crypto.subtle.generateKey(k_curve, true, ['deriveBits']);
  return { keys, open: new Uint8Array(await crypto.subtle.exportKey('raw', keys.publicKey)) };
}

describe('RFC 9180, appendix A.3.1: DHKEM(P-256, HKDF-SHA256), HKDF-SHA256, AES-128-GCM, base mode', () => {
  test('keys are derived, sealed messages are made and opened to the byte', async () => {
    const hpke = suite();
    assert.deepEqual([hpke.kem.id, hpke.kdf.id, hpke.aead.id], [k_vector.kem_id, k_vector.kdf_id, k_vector.aead_id]);
    const ekm = await hpke.kem.deriveKeyPair(hex(k_vector.ikmE));
    const recipient = await hpke.kem.deriveKeyPair(hex(k_vector.ikmR));
    const serialized = async (key) => text(await hpke.kem.serializePublicKey(key));
    assert.equal(await serialized(ekm.publicKey), k_vector.pkEm);
    assert.equal(await serialized(recipient.publicKey), k_vector.pkRm);
    const info = hex(k_vector.info);
    const sender = await hpke.createSenderContext({ recipientPublicKey: recipient.publicKey, info, ekm });
    const receiver = await hpke.createRecipientContext({ recipientKey: recipient, info, enc: hex(k_vector.enc) });
    assert.equal(text(sender.enc), k_vector.enc);
    assert.equal(k_vector.encryptions.length, 3);
    for (const { pt, aad, ct } of k_vector.encryptions) {
      assert.equal(text(await sender.seal(hex(pt), hex(aad))), ct);
      assert.equal(text(await receiver.open(hex(ct), hex(aad))), pt);
    }
  });

  test('one bit of the vector changed, in the key, the message or what it is bound to: refused', async () => {
    const hpke = suite();
    const recipientKey = await hpke.kem.deriveKeyPair(hex(k_vector.ikmR));
    const { aad, ct } = k_vector.encryptions[0];
    const opens = async ({ enc = k_vector.enc, bound = aad, sealed = ct }) => {
      try {
        await hpke.open({ recipientKey, info: hex(k_vector.info), enc: hex(enc) }, hex(sealed), hex(bound));
        return true;
      } catch { return false; }
    };
    assert.equal(await opens({}), true);
    const turned = (words, bit) => {
      const bytes = hex(words);
      bytes[bit >> 3] ^= 1 << (bit & 7);
      return text(bytes);
    };
    for (const [name, words] of Object.entries({ enc: k_vector.enc, bound: aad, sealed: ct })) {
      for (let bit = 0; bit < words.length * 4; bit += 1) {
        assert.equal(await opens({ [name]: turned(words, bit) }), false, `${name}, bit ${bit}`);
      }
    }
  });
});

// npm's hpke is written by other people and shares no code with the one the page uses.
describe('another implementation', () => {
  const theirs = new other.CipherSuite(other.KEM_DHKEM_P256_HKDF_SHA256, other.KDF_HKDF_SHA256, other.AEAD_AES_128_GCM);
  const bound = k_words.encode('rehale-sealed-1'), plain = k_words.encode('R1 and so on');

  test('opens what the page seals', async () => {
    const pair = await theirs.GenerateKeyPair(true);
    const open_key = new Uint8Array(await theirs.SerializePublicKey(pair.publicKey));
    const { enc, sealed } = await seal(open_key, bound, plain);
    assert.deepEqual(new Uint8Array(await theirs.Open(pair.privateKey, enc, sealed, { aad: bound })), plain);
  });

  test('is opened by the page', async () => {
    const { keys, open: raw } = await someKeys();
    const { encapsulatedSecret, ciphertext } = await theirs.Seal(await theirs.DeserializePublicKey(raw), plain, { aad: bound });
    const opened = await open(keys, { enc: new Uint8Array(encapsulatedSecret), bound, sealed: new Uint8Array(ciphertext) });
    assert.deepEqual(opened, plain);
  });
});

test('every bit of a whole envelope counts: 100 % of changed ones are refused', async () => {
  const { keys, open: publicKey } = await someKeys();
  const plain = crypto.getRandomValues(new Uint8Array(170));  // a usual run
  const bound = crypto.getRandomValues(new Uint8Array(47));   // 15 + 16 + 16 bytes (core/exchange/sealed_code.h)
  const { enc, sealed } = await seal(publicKey, bound, plain);
  assert.equal(enc.length, 65);
  assert.equal(sealed.length, plain.length + 16);
  assert.deepEqual(await open(keys, { enc, bound, sealed }), plain);
  let tried = 0;
  for (const [name, bytes] of Object.entries({ enc, bound, sealed })) {
    for (let bit = 0; bit < bytes.length * 8; bit += 1) {
      const changed = Uint8Array.from(bytes);
      changed[bit >> 3] ^= 1 << (bit & 7);
      await assert.rejects(open(keys, { enc, bound, sealed, [name]: changed }), `${name}, bit ${bit}`);
      tried += 1;
    }
  }
  assert.equal(tried, 8 * (65 + 47 + 186));
});

test('two seals of the same result differ; another key opens none', async () => {
  const { keys, open: publicKey } = await someKeys();
  const bound = k_words.encode('b'), plain = k_words.encode('the same');
  const one = await seal(publicKey, bound, plain), two = await seal(publicKey, bound, plain);
  assert.notDeepEqual(one.enc, two.enc);
  assert.notDeepEqual(one.sealed, two.sealed);
  await assert.rejects(open((await someKeys()).keys, { ...one, bound }));
  assert.deepEqual(await open(keys, { ...two, bound }), plain);
  for (const enc of [new Uint8Array(0), new Uint8Array(65), one.enc.subarray(1), new Uint8Array([...one.enc, 0])]) {
    await assert.rejects(open(keys, { ...one, enc, bound }));
  }
});

test('the service seals for a public key; a point that is not on the curve is refused', async () => {
  const { keys, open: publicKey } = await someKeys();
  const bound = k_words.encode('bound'), plain = k_words.encode('plain');
  const [enc, sealed] = (await services.seal([publicKey, bound, plain].map(toBase64url).join('\n'))).split('\n').map(fromBase64url);
  assert.deepEqual(await open(keys, { enc, bound, sealed }), plain);
  const off = Uint8Array.from(publicKey);
  off[64] ^= 1;
  await assert.rejects(services.seal([off, bound, plain].map(toBase64url).join('\n')));
  await assert.rejects(services.openSealed('a b c'), /no key is open/);
});

test('opened with the key file: each line by itself, in order; broken ones give nothing; locked again, none', async () => {
  const file = await makeKeyFile('four plain green words', '2026-11-26', k_fast);
  assert.equal(await unlockWith(file, 'four plain grey words'), undefined);
  await assert.rejects(services.openSealed('a b c'), /no key is open/);
  const publicKey = await unlockWith(file, 'four plain green words');
  assert.equal(publicKey, JSON.parse(file).publicKey);
  const results = Array.from({ length: 40 }, (_, n) => ({ bound: k_words.encode(`bound ${n}`), plain: k_words.encode(`R1 number ${n}`) }));
  const lines = await Promise.all(results.map(async ({ bound, plain }) => {
    const [enc, sealed] = (await services.seal([fromBase64url(publicKey), bound, plain].map(toBase64url).join('\n'))).split('\n');
    return [enc, toBase64url(bound), sealed];
  }));
  lines[3] = [lines[3][0], lines[4][1], lines[3][2]];  // bound to another assignment
  lines[7] = ['no', 'such', 'thing!'];
  lines[9] = [''];
  const opened = (await services.openSealed(lines.map((parts) => parts.join(' ')).join('\n'))).split('\n');
  assert.deepEqual(opened, results.map(({ plain }, n) => ([3, 7, 9].includes(n) ? '' : toBase64url(plain))));
  assert.equal(await services.lock(), '');
  await assert.rejects(services.openSealed(lines[0].join(' ')), /no key is open/);
});

describe('the key file', () => {
  const valid = new Ajv().compile(JSON.parse(readFileSync(path.join(root, 'assets/key.schema.json'), 'utf8')));

  test('is as published, with at least 600,000 iterations; opens with its passphrase and no other', async () => {
    const file = await makeKeyFile('four plain green words', '2026-11-26');
    assert.ok(valid(JSON.parse(file)), JSON.stringify(valid.errors));
    assert.ok(JSON.parse(file).kdf.iterations >= 600_000);
    const { publicKey } = readKeyFile(file);
    const keys = await openKeyFile(file, 'four plain green words');
    assert.equal(keys.privateKey.extractable, false);
    assert.equal(await openKeyFile(file, 'four plain green word'), undefined);
    const bound = k_words.encode('b'), plain = k_words.encode('p');
    assert.deepEqual(await open(keys, { ...await seal(publicKey, bound, plain), bound }), plain);
  });

  test('holds no secret in the clear, and no two are alike', async () => {
    const [one, two] = await Promise.all([makeKeyFile('p'.repeat(12), '', k_fast), makeKeyFile('p'.repeat(12), '', k_fast)]);
    const [a, b] = [one, two].map((file) => JSON.parse(file));
    for (const part of ['publicKey', 'lockedKey']) assert.notEqual(a[part], b[part]);
    assert.notEqual(a.kdf.salt, b.kdf.salt);
    assert.notEqual(a.cipher.iv, b.cipher.iv);
    assert.ok(!one.includes('p'.repeat(12)));
  });

  // Node's own PBKDF2 and AES-GCM, another code than WebCrypto's surface.
  test('is opened by general means, as its description says', async () => {
    const { createDecipheriv, createECDH, pbkdf2Sync } = await import('node:crypto');
    const file = JSON.parse(await makeKeyFile('Zwölf Zeichen', '2026-11-26', k_fast));
    const lock = pbkdf2Sync('Zwölf Zeichen'.normalize('NFKC'), Buffer.from(file.kdf.salt, 'base64url'), k_fast, 32, 'sha256');
    const locked = Buffer.from(file.lockedKey, 'base64url');
    const cipher = createDecipheriv('aes-256-gcm', lock, Buffer.from(file.cipher.iv, 'base64url'));
    cipher.setAAD(Buffer.from(file.publicKey, 'base64url'));
    cipher.setAuthTag(locked.subarray(32));
    const secret = Buffer.concat([cipher.update(locked.subarray(0, 32)), cipher.final()]);
    const pair = createECDH('prime256v1');
    pair.setPrivateKey(secret);
    assert.equal(pair.getPublicKey('base64url'), file.publicKey);
  });

  test('changed, cut or made up, it is refused', async () => {
    const good = await makeKeyFile('p'.repeat(12), '2026-11-26', k_fast);
    const changed = (change) => {
      const file = JSON.parse(good);
      change(file);
      return JSON.stringify(file);
    };
    const flip = (words) => `${words[0] === 'A' ? 'B' : 'A'}${words.slice(1)}`;
    const refused = [
      '', '{', '[]', 'null', '{}', good.slice(0, -20), ' '.repeat(5000), changed((file) => { file.schema = 2; }),
      changed((file) => { file.kind = 'rehale-run'; }), changed((file) => { file.kdf.iterations = 1e9; }),
      changed((file) => { file.kdf.iterations = 0; }), changed((file) => { file.publicKey = 'AAAA'; }),
      changed((file) => { file.publicKey = flip(file.publicKey); }), changed((file) => { file.lockedKey += 'A'; }),
      changed((file) => { delete file.cipher; }), changed((file) => { file.kdf.hash = 'SHA-1'; }),
    ];
    for (const file of refused) assert.throws(() => readKeyFile(file), KeyFileError, file.slice(0, 60));
    for (const part of ['lockedKey', 'salt', 'iv']) {
      const file = changed((all) => {
        const holder = { lockedKey: all, salt: all.kdf, iv: all.cipher }[part];
        holder[part] = flip(holder[part]);
      });
      assert.equal(await openKeyFile(file, 'p'.repeat(12)), undefined, part);
    }
    // Another public key put into the file: what is sealed for it would be lost, so the file does not open.
    const other_key = JSON.parse(await makeKeyFile('q'.repeat(12), '', k_fast)).publicKey;
    assert.equal(await openKeyFile(changed((file) => { file.publicKey = other_key; }), 'p'.repeat(12)), undefined);
  });
});

test('base64url: bytes come back, spoilt letters do not', () => {
  for (let length = 0; length < 40; length += 1) {
    const bytes = crypto.getRandomValues(new Uint8Array(length));
    assert.equal(toBase64url(bytes), Buffer.from(bytes).toString('base64url'));
    assert.deepEqual(fromBase64url(toBase64url(bytes)), bytes);
  }
  for (const spoilt of ['A', 'AB', 'AA==', 'A A', 'AAA+', 'AAAAA']) assert.throws(() => fromBase64url(spoilt), spoilt);
});
