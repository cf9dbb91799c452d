package org.benchtrail.webhook;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Set;
import org.benchtrail.core.integrity.MessageSignature;
import org.benchtrail.platform.database.OwnerOnly;

/** A program that is told of changes. */
record Receiver(String name, URI address, byte[] secret) {
    private static final Set<String> THIS_MACHINE = Set.of("localhost", "127.0.0.1", "[::1]");

    /** @throws IllegalStateException with a sentence for whoever runs the server: it does not start so */
    static Receiver of(String name, WebhookConfig.To to) {
        require(name.matches("[a-z0-9][a-z0-9-]{0,39}"), name, "name it by up to 40 small letters, digits and hyphens");
        URI address = to.address();
        String host = String.valueOf(address.getHost());
        boolean plain = "http".equals(address.getScheme()) && THIS_MACHINE.contains(host);
        require(
                address.getHost() != null && address.getUserInfo() == null && address.getFragment() == null,
                name,
                "give its address as https://host/path, with no name or password in it");
        require(
                plain || "https".equals(address.getScheme()),
                name,
                "what goes over the network goes by https; http is for this machine alone");
        try {
            require(
                    !OwnerOnly.isOpen(to.secretFile()),
                    name,
                    "others can read " + to.secretFile() + ": take their rights away");
            String written =
                    Files.readString(to.secretFile(), StandardCharsets.US_ASCII).strip();
            return new Receiver(name, address, MessageSignature.secret(written));
        } catch (IOException e) {
            throw refusal(name, "its secret cannot be read from " + to.secretFile());
        } catch (IllegalArgumentException e) {
            throw refusal(name, String.valueOf(e.getMessage()));
        }
    }

    /** Where it is, without what its path may tell. */
    String place() {
        return address.getScheme() + "://" + address.getAuthority();
    }

    private static void require(boolean holds, String name, String sentence) {
        if (!holds) {
            throw refusal(name, sentence);
        }
    }

    private static IllegalStateException refusal(String name, String sentence) {
        return new IllegalStateException("benchtrail.webhooks.to." + name + ": " + sentence + ".");
    }
}
