import { render } from 'preact';
import { App } from './shell/App.tsx';
import { sendFor } from './shell/parts.ts';
import './style/fonts.css';
import './style/tokens.css';
import './style/base.css';
import './style/question.css';
import './style/answer.css';
import './style/charts.css';
import './style/reasons.css';
import './style/print.css';

sendFor(location.pathname);
const page = document.getElementById('page');
if (page) render(<App />, page);
