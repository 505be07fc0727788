/** "Mara Okafor-Lind" → "MOL" */
export const initialsOf = (name: string) => name.split(/[\s-]+/).filter(Boolean).map((w) => w[0]?.toUpperCase() ?? '').join('').slice(0, 6);
