import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';
import rules from './family.css?inline';
import { FamilySheet } from './FamilyChart.tsx';
import { familyGeometry, type FamilyPicture } from './familyGeometry.ts';
import { plainRules } from './plainRules.ts';

/** All lanes as an SVG file of its own, 1,200 pixels wide. */
export function familySvg(picture: FamilyPicture, season: number | null): string {
  const drawn = familyGeometry(picture, season, 1200);
  const place = document.createElement('div');
  const root = createRoot(place);
  flushSync(() => root.render(<FamilySheet picture={drawn} first={0} last={drawn.lanes.length - 1} />));
  const svg = place.querySelector('svg');
  if (svg === null) throw new Error('the picture was not drawn');
  const style = document.createElementNS('http://www.w3.org/2000/svg', 'style');
  style.textContent = plainRules(rules);
  svg.prepend(style);
  const text = new XMLSerializer().serializeToString(svg);
  root.unmount();
  return `<?xml version="1.0" encoding="UTF-8"?>\n${text}\n`;
}
