// What browsers have everywhere and the Node.js of Debian 12 (18) keeps in modules. Imported before what needs it.
import { File } from 'node:buffer';
import { webcrypto } from 'node:crypto';

globalThis.crypto ??= webcrypto;
globalThis.File ??= File;
