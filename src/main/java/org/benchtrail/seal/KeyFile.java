package org.benchtrail.seal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.platform.database.OwnerOnly;

/** An Ed25519 key in a file that only its owner can read: the private key as PKCS#8 and the public one as X.509, both in PEM. */
public final class KeyFile {
    private KeyFile() {}

    /** A key file that cannot be used; the message says why, for people. */
    public static final class Unusable extends Exception {
        private static final long serialVersionUID = 1;

        Unusable(String sentence) {
            super(sentence);
        }
    }

    /** Makes a key. */
    public static KeyPair make(Path file) throws IOException {
        try {
            KeyPair pair = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
            Path folder = file.toAbsolutePath().getParent();
            if (folder != null) {
                Files.createDirectories(folder);
            }
            OwnerOnly.write(
                    file,
                    pem("PRIVATE KEY", pair.getPrivate().getEncoded())
                            + pem("PUBLIC KEY", pair.getPublic().getEncoded()));
            return pair;
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("Java 17 has Ed25519", e);
        }
    }

    /** @throws Unusable if others can read the file, or it holds no two keys of Ed25519 */
    public static KeyPair read(Path file) throws IOException, Unusable {
        if (OwnerOnly.isOpen(file)) {
            throw new Unusable("Others can read " + file + ": take their rights away, and think of a new key.");
        }
        String text = Files.readString(file, StandardCharsets.US_ASCII);
        try {
            KeyFactory keys = KeyFactory.getInstance("Ed25519");
            return new KeyPair(
                    keys.generatePublic(new X509EncodedKeySpec(part(file, text, "PUBLIC KEY"))),
                    keys.generatePrivate(new PKCS8EncodedKeySpec(part(file, text, "PRIVATE KEY"))));
        } catch (GeneralSecurityException | IllegalArgumentException e) {
            throw new Unusable(file + " holds no Ed25519 key: " + e.getMessage());
        }
    }

    private static String pem(String kind, byte[] content) {
        return "-----BEGIN " + kind + "-----\n"
                + Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(content) + "\n-----END " + kind
                + "-----\n";
    }

    private static byte[] part(Path file, String text, String kind) throws Unusable {
        Matcher part = Pattern.compile("-----BEGIN " + kind + "-----(.*?)-----END " + kind + "-----", Pattern.DOTALL)
                .matcher(text);
        if (!part.find()) {
            throw new Unusable(file + " has no part " + kind + ".");
        }
        return Base64.getMimeDecoder().decode(part.group(1));
    }
}
