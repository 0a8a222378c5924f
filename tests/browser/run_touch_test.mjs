// A full run in each family by finger, through the accessibility tree alone (issue 2, "Outside checks").
import { walkEveryFamily } from './support/run.mjs';
import { byTouch } from './support/ways.mjs';

walkEveryFamily(byTouch, { touch: true, calm: true });
