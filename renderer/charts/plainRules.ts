/** Inks of a picture that leaves the program: black on white, the queens in their colours. */
const inks: Readonly<Record<string, string>> = {
  paper: '#ffffff', tint: '#ffffff', rule: '#c8c8c8', edge: '#868686', 'queen-white': '#ffffff', 'queen-yellow': '#e8b90c', 'queen-red': '#b8322a', 'queen-green': '#2f7d46', 'queen-blue': '#2f62a8',
};

/** Many programs that open SVG know nothing of variables, so that each is written out. */
export function plainRules(css: string): string {
  return `svg { background: #ffffff; font: 13px 'Source Sans 3', Arial, sans-serif; } .chart-name { font-weight: 600; }\n${css.replaceAll(/var\(--([\w-]+)\)/g, (_, name: string) => inks[name] ?? '#000000')}`;
}
