// Part of the build: what the page draws before its first script. The wall of the first example stands in the page itself, and a small script
// of its own shows it, or the person's own wall, where that is what will be opened (src/ui/wall/early/).
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { build, type Plugin, type Rolldown, runnerImport } from 'vite';
import type * as Example from '../src/ui/wall/early/example';

const SCRIPT = 'src/ui/wall/early/earlyWall.ts';
const EXAMPLE = 'src/ui/wall/early/example.tsx';
const EMPTY = '<svg class="top" aria-hidden="true"></svg>';

/** The plugin; while the tool is being developed the page begins empty. */
export function earlyWall(): Plugin {
  let root = '';
  let file = '';
  return {
    name: 'wedgewall-early-wall',
    apply: 'build',
    configResolved: (config) => {
      root = config.root;
    },
    async generateBundle() {
      file = this.getFileName(
        this.emitFile({ type: 'asset', name: 'earlyWall.js', source: await scriptText(root) }),
      );
    },
    transformIndexHtml: {
      order: 'post',
      handler: async (html) => {
        if (!html.includes(EMPTY)) throw new Error(`earlyWall: the page has no ${EMPTY}`);
        const example = await firstExample(root);
        return html
          .replace('<script ', `<script type="module" src="./${file}"></script>\n    <script `)
          .replace(EMPTY, () => example);
      },
    },
  };
}

async function scriptText(root: string): Promise<string> {
  const config = { root, configFile: false as const, logLevel: 'silent' as const };
  const output = { format: 'iife' as const };
  const into = { write: false, target: 'es2022', rolldownOptions: { input: join(root, SCRIPT), output } };
  const built = (await build({ ...config, build: into })) as Rolldown.RolldownOutput;
  return built.output[0].code;
}

/** The wall of the example that ui/demos.ts puts first. */
async function firstExample(root: string): Promise<string> {
  const folder = join(root, 'demo-data');
  const [name] = readdirSync(folder).sort();
  const { module } = await runnerImport<typeof Example>(join(root, EXAMPLE), { root, configFile: false });
  return module.exampleSvg(readFileSync(join(folder, name!), 'utf8'));
}
