package org.benchtrail.catalogue;

import jakarta.enterprise.context.ApplicationScoped;

/** The versions of the catalogue. */
@ApplicationScoped
public class Catalogues {
    private final CatalogueVersion delivered = CatalogueVersion.of(1, CatalogueFile.delivered());

    /** The version that new rankings are made with. */
    public CatalogueVersion inForce() {
        return delivered;
    }

    /** @throws org.benchtrail.platform.NotFound if there never was such a version */
    public CatalogueVersion version(int number) {
        if (number != delivered.number()) {
            throw new org.benchtrail.platform.NotFound("version " + number + " of the catalogue");
        }
        return delivered;
    }
}
