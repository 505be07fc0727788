/** Under the help of each command. */
export const EXAMPLES = {
  culet: `
Examples:
  culet read spectrum.jdx
  culet analyse pl.txt --method photoluminescence --laser-nm 532 --x-unit nm
  culet report C-2026-0001 --out report.pdf
  culet verify Casebook.culet

Exit codes: 0 all went well, 1 something did not, 2 the command itself was wrong.`,
  read: `
Examples:
  culet read spectrum.jdx other.csv
  culet read measurements/ --json        every file in a folder
  gunzip -c spectrum.jdx.gz | culet read - --json`,
  analyse: `
Examples:
  culet analyse pl.txt --method photoluminescence --laser-nm 532 --temperature-k 77 --x-unit angstrom
  culet analyse ftir.dpt --method infrared --x-unit cm-1 --json
  culet analyse measurements/ --method photoluminescence --laser-nm 532 --workers 2 --json   every file in a folder`,
  conclude: `
Examples:
  culet conclude stone.json
  culet conclude stone.json --json
  culet conclude - --json < stone.json`,
  report: `
Examples:
  culet report C-2026-0001 --out report.pdf
  culet report C-2026-0001 --out draft.pdf --draft --casebook Casebook.culet`,
  verify: `
Examples:
  culet verify ~/.config/Culet/Casebook.culet
  culet verify Casebook.culet --json     also while the program is open
  culet verify Copy.culet --remembered state.json
  culet verify S-2026-0001.pdf           a report, with the keys of the casebook last used
  culet verify S-2026-0001.pdf --key laboratory-key.pem
  culet verify quarter.zip --key laboratory-key.pem   a bundle

Exit codes for a report and a bundle: 0 authentic, 1 altered, 3 unaltered but by an unknown key, 4 without a signature, or neither report nor bundle.`,
  figures: `
Examples:
  culet figures --casebook Casebook.culet
  culet figures --from 2026-01-01 --to 2026-12-31 --by quarter --csv over-time > figures.csv`,
  bundle: `
Examples:
  culet bundle C-2026-0001 --out case.zip
  culet bundle Casebook.culet --from 2026-10-01 --to 2026-12-31 --out quarter.zip
  culet bundle C-2026-0001 --out case.zip --person "Ada Invented"      signed; the password is asked for
  culet verify quarter.zip`,
  import: `
Examples:
  culet verify other.zip
  culet import other.zip --casebook Casebook.culet --person "Ada Invented"
  culet import other.zip --casebook Casebook.culet --person "Ada Invented" --checked-how "fingerprint read out by telephone"
  culet import other.zip --person "Ada Invented" --password-stdin --json < password.txt

Exit codes: 0 taken in, 1 altered, refused or not tried to the end, 2 the command itself was wrong, 3 by an unknown key and not said how it was made sure whose it is, 4 the same signed by nobody, or no bundle.`,
  serve: `
Example:
  culet serve --data ./laboratory --open`,
  demo: `
Example:
  culet demo --out ./demonstration`,
} as const;
