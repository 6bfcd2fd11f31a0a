// Files that are dropped where nothing takes them are let go: the browser would open them in place of the tool.

/** Watches a page from now on, after whatever takes files itself. */
export function letStrayFilesGo(page: Document): void {
  const heed = (event: DragEvent) => {
    if (event.defaultPrevented || !event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = 'none';
  };
  page.defaultView?.addEventListener('dragover', heed);
  page.defaultView?.addEventListener('drop', heed);
}
