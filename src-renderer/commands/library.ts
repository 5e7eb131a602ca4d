/** Every edit of the products, instruments and settings that all sites share. */
export * from './library/instruments'
export * from './library/products'
export * from './library/settings'
