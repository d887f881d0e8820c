/** uPlot with its stylesheet, and the guard that has to run before it: the charts import it from here. */
import './plainLanguage.ts';
import 'uplot/dist/uPlot.min.css';
import UPlot from 'uplot';

export default UPlot;
