// The hatching of waste between wedges, defined once for all diagrams on the page.
export const WASTE_HATCH = 'wdg-waste';

export function WasteHatch() {
  return (
    <svg width="0" height="0" style={{ position: 'absolute' }} aria-hidden>
      <defs>
        <pattern
          id={WASTE_HATCH}
          width="0.7"
          height="0.7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <rect width="0.7" height="0.7" className="wdg-waste-ground" />
          <rect width="0.7" height="0.12" className="wdg-waste-line" />
        </pattern>
      </defs>
    </svg>
  );
}
