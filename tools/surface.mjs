// Writes docs/surface/<package>.txt: what each package exports. Run on purpose, reviewed as a diff.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './house/root.mjs';
import { surfacePackages, surfaceText } from './tidy/surface.mjs';

mkdirSync(join(root, 'docs', 'surface'), { recursive: true });
for (const name of surfacePackages()) writeFileSync(join(root, 'docs', 'surface', `${name}.txt`), surfaceText(name));
