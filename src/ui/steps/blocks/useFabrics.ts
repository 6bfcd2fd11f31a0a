// The project's fabrics by id.
import { useMemo } from 'react';
import type { Fabric, FabricId } from '../../../model/project';
import { useApp } from '../../app';

/** The fabrics of the project by id; the same map while they do not change. */
export function useFabrics(): ReadonlyMap<FabricId, Fabric> {
  const fabrics = useApp((app) => app.project.fabrics);
  return useMemo(() => new Map(fabrics.map((fabric) => [fabric.id, fabric])), [fabrics]);
}
