/** The house's sign: a faceted stone from the side. */
export function Mark({ size = 18 }: { readonly size?: number }) {
  return (
    <svg width={size} height={size} viewBox="0 0 18 18" aria-hidden="true" fill="none" stroke="currentColor" strokeWidth={1.2} strokeLinejoin="round">
      <path d="M5 2.6h8L16.4 7 9 15.8 1.6 7z" />
      <path d="M1.6 7h14.8M5 2.6 6.2 7 9 15.8 11.8 7 13 2.6M6.2 7 9 2.6 11.8 7" />
    </svg>
  );
}
