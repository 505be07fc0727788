import { openPicture } from '../open-picture.ts';
import { TEXT } from '../paper.ts';
import type { Element, Sheet } from '../sheet.ts';

export type Letterhead = { readonly name: string; readonly address: string; readonly logo: { readonly base64: string } | null };

/** More lines than any name of a laboratory fills: on its first page it is never cut. */
const WHOLE_NAME_LINES = 8;
/** Room kept at the right for number and page. */
const ASIDE = 190;
const LOGO = { width: 96, height: 36, gap: 12 } as const;

/** Width the logo takes, 0 where there is none or it can't be drawn. */
function drawLogo(sheet: Sheet, parent: Element, logo: Letterhead['logo'], name: string): number {
  const picture = logo ? openPicture(sheet.doc, logo.base64) : null;
  if (!picture) return 0;
  const scale = Math.min(LOGO.width / picture.width, LOGO.height / picture.height);
  sheet.within(sheet.child(parent, 'Figure', { alt: `Logo of ${name}` }), 'Figure', () => {
    sheet.doc.image(picture.image, sheet.left, sheet.y, { fit: [LOGO.width, LOGO.height] });
  });
  return picture.width * scale + LOGO.gap;
}

/** Name and address of the laboratory at the top of the first page, with its logo where it has one. */
export function letterhead(sheet: Sheet, parent: Element, laboratory: Letterhead): void {
  const top = sheet.y;
  const inset = drawLogo(sheet, parent, laboratory.logo, laboratory.name);
  const width = sheet.width - ASIDE - inset;
  const x = sheet.left + inset;
  sheet.within(sheet.child(parent, 'P'), 'P', () => {
    for (const line of sheet.lines(laboratory.name, width, TEXT.laboratory, WHOLE_NAME_LINES)) {
      sheet.put(line, x, sheet.y, TEXT.laboratory);
      sheet.y += TEXT.laboratory.pitch;
    }
  });
  const address = laboratory.address.split('\n').map((part) => part.trim()).filter((part) => part !== '').join(' · ');
  if (address !== '') {
    sheet.within(sheet.child(parent, 'P'), 'P', () => {
      for (const line of sheet.lines(address, width, TEXT.label, 2)) {
        sheet.put(line, x, sheet.y, TEXT.label);
        sheet.y += TEXT.label.pitch;
      }
    });
  }
  sheet.y = Math.max(sheet.y, top + (inset > 0 ? LOGO.height : 0), top + 2 * TEXT.label.pitch);
}
