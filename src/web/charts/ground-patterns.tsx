/**
 * What lies on a bed that is no crop, as patterns: covers, mulch and open soil. Families of crops have theirs in
 * patterns.tsx.
 */

/** The drawings, once on a page that shows a strip. */
export const GroundPatterns = () => (
  <svg class="definitions" width="0" height="0" aria-hidden="true">
    <defs>
      <pattern id="ground-cover" width="6" height="6" patternUnits="userSpaceOnUse">
        <path class="ground-cover" d="M-1.5 1.5l3 -3M0 6l6 -6M4.5 7.5l3 -3" />
      </pattern>
      <pattern id="ground-mulch" width="12" height="9" patternUnits="userSpaceOnUse">
        <path class="ground-mulch" d="M1 2h5M7 5h4.5M2 8h5" />
      </pattern>
      <pattern id="ground-soil" width="9" height="9" patternUnits="userSpaceOnUse">
        <path class="ground-soil" d="M2 2h0.9M6.5 6.5h0.9" />
      </pattern>
    </defs>
  </svg>
);

/** What a shape is filled with that shows a cover, mulch or open soil. */
export function groundFill(what: 'cover' | 'mulch' | 'soil'): string {
  return `url(#ground-${what})`;
}
