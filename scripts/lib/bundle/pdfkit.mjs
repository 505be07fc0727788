import { cpSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { inRoot } from '../paths.mjs';

/**
 * Lets pdfkit live inside a bundle. It looks for its standard fonts through its own package.json and for a colour profile
 * beside its own file; neither is there once it is bundled. The fonts become ordinary imports, the profile lies in data/.
 * Stops the build when pdfkit no longer has the lines that are replaced, since a report would fail much later.
 * @returns {import('vite').Plugin}
 */
export function pdfkitInBundle() {
  return {
    name: 'pdfkit-in-bundle',
    transform(code, id) {
      if (!/[\\/]pdfkit[\\/]js[\\/]pdfkit\.node\.mjs$/.test(id)) return undefined;
      /** @type {string[]} */
      const imports = [];
      const withFonts = code.replaceAll(/require\$1\('#standard-fonts\/(\w+)'\)/g, (_all, font) => {
        imports.push(`import standard${font} from 'pdfkit/standard-fonts/${font}';`);
        return `standard${font}`;
      });
      const whole = withFonts
        .replace('const require$1 = createRequire(import.meta.url);', '')
        // fs takes a path or a URL object; the text of a URL is neither.
        .replace("new URL('./data/sRGB_IEC61966_2_1.icc', import.meta.url).href", "__dirname + '/data/sRGB_IEC61966_2_1.icc'");
      if (imports.length !== 14 || whole.includes('import.meta.url')) {
        this.error('pdfkit has changed: look at how it loads its standard fonts and its colour profile, and adapt scripts/lib/bundle/pdfkit.mjs');
      }
      return { code: `${imports.join('\n')}\n${whole}`, map: null };
    },
  };
}

/** Puts pdfkit's colour profile where the bundled code looks for it. @param {string} outDir */
export function copyPdfkitData(outDir) {
  mkdirSync(join(outDir, 'data'), { recursive: true });
  const name = 'sRGB_IEC61966_2_1.icc';
  cpSync(inRoot('node_modules', 'pdfkit', 'js', 'data', name), join(outDir, 'data', name));
}
