import './trusted-types.ts';
import '#ui/base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import { ErrorScreen } from './ErrorScreen.tsx';
import { loadLanguage } from './language.ts';

const root = document.getElementById('app');
if (!root) throw new Error('main: the page has no #app');

const language = await loadLanguage();
createRoot(root).render(
  <StrictMode>
    <ErrorScreen words={language.first}>
      <App language={language} />
    </ErrorScreen>
  </StrictMode>,
);
