/** The paragraphs of a text, one a line, without empty ones. */
export const paragraphsOf = (text: string): string[] => text.split(/\n+/).map((line) => line.trim()).filter((line) => line !== '');
