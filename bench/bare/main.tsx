// The yardstick for the first wall: a page of React and the drawing alone, with the example that a first visit opens.
import { createRoot } from 'react-dom/client';
import { grainsOf, mergedPaths, patternsFor } from '../../src/drawing/blockPaths';
import { drawProject } from '../../src/drawing/drawProject';
import { NO_HREFS } from '../../src/drawing/photos';
import type { Project } from '../../src/model/project';

function Wall({ project }: { project: Project }) {
  const drawing = drawProject(project);
  const patterns = patternsFor(project.fabrics, grainsOf(project.wedge.perBlock), NO_HREFS);
  return (
    <svg viewBox={`0 0 ${drawing.width} ${drawing.height}`} role="img" aria-label="The wall">
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: the tool's own patterns, as on its page */}
      <defs dangerouslySetInnerHTML={{ __html: patterns.map(({ markup }) => markup).join('') }} />
      <g className="seen">
        {mergedPaths(drawing.setting, project.fabrics).map(({ fabric, fill, d }) => (
          <path key={`${fabric} ${fill}`} d={d} fill={fill || 'none'} />
        ))}
        {drawing.blocks.map(({ block, centre, quarters, pieces }) => (
          <g
            key={block}
            transform={`translate(${centre.x} ${centre.y}) rotate(${quarters * 90 + drawing.tilt})`}
          >
            {mergedPaths(pieces, project.fabrics).map(({ fabric, fill, d }) => (
              <path key={`${fabric} ${fill}`} d={d} fill={fill || 'none'} />
            ))}
          </g>
        ))}
      </g>
    </svg>
  );
}

const quilt = (await (await fetch('./quilt.json')).json()) as Project;
const root = document.getElementById('root');
if (!root) throw new Error('main: the page has no #root');
createRoot(root).render(<Wall project={quilt} />);
