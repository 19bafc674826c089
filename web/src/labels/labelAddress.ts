export const labelAddress = (id: string): string => `/labels/${encodeURIComponent(id)}`;
