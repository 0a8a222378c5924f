// A full run in each family by mouse, through the accessibility tree alone (issue 2, "Outside checks").
import { walkEveryFamily } from './support/run.mjs';
import { byMouse } from './support/ways.mjs';

walkEveryFamily(byMouse, {}, { whole: true });
