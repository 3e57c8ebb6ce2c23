// Smart Forms as a page can load it: `smartForms.show(form)` renders, `smartForms.response()` reads.
import {
  BaseRenderer,
  buildForm,
  getResponse,
  RendererThemeProvider,
  removeEmptyAnswersFromResponse,
  useRendererQueryClient,
} from '@aehrc/smart-forms-renderer';
import { QueryClientProvider } from '@tanstack/react-query';
import { createElement } from 'react';
import { createRoot } from 'react-dom/client';

function App() {
  const client = useRendererQueryClient();
  const renderer = createElement(BaseRenderer);
  const provider = createElement(QueryClientProvider, { client }, renderer);
  return createElement(RendererThemeProvider, null, provider);
}

globalThis.smartForms = {
  show: async (questionnaire, questionnaireResponse) => {
    await buildForm({ questionnaire, questionnaireResponse });
    createRoot(document.getElementById('f')).render(createElement(App));
  },
  /** As it is, with answers that are hidden. */
  response: () => getResponse(),
  /** As an application should send it. */
  cleared: (questionnaire) => removeEmptyAnswersFromResponse(questionnaire, getResponse()),
};
