import { QueryClientProvider } from '@tanstack/react-query';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { config } from 'zod';
import { App } from './app.tsx';
import './look/fonts.css';
import './look/tokens.css';
import './look/base.css';
import './look/plain-table.css';
import { NotesHost } from './look/notes.tsx';
import { applyTheme } from './look/theme.ts';
import { queryClient } from './queries.ts';

// The page's policy forbids making code from text; without this, zod would try it once and be reported.
config({ jitless: true });
applyTheme();

createRoot(document.getElementById('root') as HTMLElement).render(
  <StrictMode>
    <QueryClientProvider client={queryClient}>
      <NotesHost><App /></NotesHost>
    </QueryClientProvider>
  </StrictMode>,
);
