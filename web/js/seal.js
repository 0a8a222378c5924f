// Sealing and opening: HPKE, RFC 9180, base mode, DHKEM(P-256, HKDF-SHA256), HKDF-SHA256, AES-128-GCM, one
// message a seal, no info; `bound` goes in as additional data. Must not know what is sealed or who holds keys.

import { Aes128Gcm, CipherSuite, DhkemP256HkdfSha256, HkdfSha256 } from '@hpke/core';

const ENC_BYTES = 65;

export const suite = () => new CipherSuite({
  kem: new DhkemP256HkdfSha256(), kdf: new HkdfSha256(), aead: new Aes128Gcm(),
});

// publicKey: 65 bytes. Returns {enc, sealed}.
export async function seal(publicKey, bound, plain) {
  const hpke = suite();
  const recipientPublicKey = await hpke.kem.deserializePublicKey(publicKey);
  const { enc, ct } = await hpke.seal({ recipientPublicKey }, plain, bound);
  return { enc: new Uint8Array(enc), sealed: new Uint8Array(ct) };
}

// keys: a CryptoKeyPair for ECDH on P-256. Throws when anything was changed, or it is for another key.
export async function open(keys, { enc, bound, sealed }) {
  if (enc.length !== ENC_BYTES) throw new Error('not an encapsulated key');
  return new Uint8Array(await suite().open({ recipientKey: keys, enc }, sealed, bound));
}
