import { render } from 'solid-js/web';
import '@fontsource-variable/national-park/wght.css';
import './style/tokens.css';
import './style/page.css';
import './style/at-once.css';
import { Page } from './Page.tsx';

// the picture that stood until now
document.querySelector('.at-once')?.remove();
render(() => <Page />, document.body);

// Over plain http a browser keeps nothing for offline use.
if (isSecureContext && 'serviceWorker' in navigator && import.meta.env.PROD) {
  void import('virtual:pwa-register').then(({ registerSW }) => registerSW({ immediate: true }));
}
