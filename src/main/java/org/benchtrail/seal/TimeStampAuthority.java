package org.benchtrail.seal;

import java.io.IOException;
import java.net.URI;
import java.util.Optional;
import org.benchtrail.seal.timestamp.TimeStampRoots;

/** Who stamps heads with the time, by the settings. */
record TimeStampAuthority(URI address, TimeStampRoots roots) {

    /**
     * None where the settings name none.
     *
     * @throws IllegalStateException with what to do, if they do not go together or cannot be used
     */
    static Optional<TimeStampAuthority> of(SealConfig.Timestamp settings) {
        if (settings.url().isEmpty() && settings.roots().isEmpty()) {
            return Optional.empty();
        }
        if (settings.url().isEmpty() || settings.roots().isEmpty()) {
            throw refused("give both, url and roots, or neither: a time-stamp counts only by a root that you trust");
        }
        try {
            URI address = URI.create(settings.url().get());
            if (!("http".equals(address.getScheme()) || "https".equals(address.getScheme()))
                    || address.getHost() == null) {
                throw refused("url is the address of the authority, beginning with https:// or http://");
            }
            return Optional.of(new TimeStampAuthority(
                    address, TimeStampRoots.read(settings.roots().get())));
        } catch (IllegalArgumentException e) {
            throw refused(String.valueOf(e.getMessage()));
        } catch (IOException e) {
            throw refused("roots cannot be read: name a file with the certificates of the roots in PEM ("
                    + e.getMessage() + ")");
        }
    }

    private static IllegalStateException refused(String sentence) {
        return new IllegalStateException("benchtrail.seal.timestamp: " + sentence + ".");
    }
}
