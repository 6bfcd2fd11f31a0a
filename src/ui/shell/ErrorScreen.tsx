// Replaces the screen when a part of it throws an error: it shows the reason and offers to save the project to a file.
import { Component, type ReactNode } from 'react';
import { writeProject } from '../../model/reading/read';
import { documentOf } from '../../store/app';
import type { Session } from '../../store/session';
import { downloadText, projectFileName } from '../../store/storage/projectFiles';
import { SessionContext } from '../session';

interface State {
  readonly reason: string | null;
  /** The file that the quilt was saved to. */
  readonly file: string | null;
}

export class ErrorScreen extends Component<{ children: ReactNode }, State> {
  static override contextType = SessionContext;
  declare context: Session | null;
  override state: State = { reason: null, file: null };

  static getDerivedStateFromError(error: unknown): Partial<State> {
    return { reason: error instanceof Error ? error.message : String(error) };
  }

  private readonly saveFile = () => {
    if (!this.context) return;
    const project = documentOf(this.context.app.getState());
    const file = projectFileName(project.name);
    downloadText(file, writeProject(project, this.context.pictures.state.getState().pictures));
    this.setState({ file });
  };

  override render() {
    if (this.state.reason === null) return this.props.children;
    return (
      <div role="alert" className="stack" style={{ padding: 24, maxWidth: '40rem' }}>
        <h2>This part of the screen stopped working</h2>
        <p>Your quilt is not lost. Undo the last change, or save the quilt to a file and reload the page.</p>
        <p className="quiet">{this.state.reason}</p>
        <div className="row">
          <button
            type="button"
            className="button solid"
            onClick={() => {
              this.context?.app.getState().undo();
              this.setState({ reason: null, file: null });
            }}
          >
            Undo and continue
          </button>
          <button type="button" className="button" onClick={this.saveFile}>
            Save to a file
          </button>
          <button type="button" className="button" onClick={() => globalThis.location.reload()}>
            Reload the page
          </button>
        </div>
        {this.state.file === null ? null : <p>Saved as {this.state.file}.</p>}
      </div>
    );
  }
}
