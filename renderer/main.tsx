import '@fontsource-variable/source-serif-4/wght.css';
import '@fontsource-variable/source-sans-3/wght.css';
import './styles/tokens.css';
import './styles/type.css';
import './styles/frame.css';
import './styles/tables.css';
import './styles/forms.css';
import './styles/screens.css';
import './styles/print.css';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { applyTheme, keptTheme } from './parts/theme.ts';

// Before the first paint, so that a person who chose dark sees no white flash.
applyTheme(keptTheme());

const place = document.getElementById('window');
if (place === null) throw new Error('the page has no place for the window');
createRoot(place).render(<App />);
