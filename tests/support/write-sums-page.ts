import { writeFileSync } from 'node:fs';
import { sumsPage } from './sums-page.ts';

writeFileSync(new URL('../../docs/sums.md', import.meta.url), await sumsPage());
