// A full run in each family by keyboard only, through the accessibility tree alone (issue 2, "Outside checks").
import { walkEveryFamily } from './support/run.mjs';
import { byKeys } from './support/ways.mjs';

walkEveryFamily(byKeys, { calm: true });
