package org.benchtrail.core.integrity;

import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.HexFormat;

/** Ed25519 keys of published tests. */
public final class Keys {
    private Keys() {}

    /** RFC 8032 section 7.1, TEST 1 to 3. */
    public static final KeyPair TEST_1 = pair(
            "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
            "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a");

    public static final KeyPair TEST_2 = pair(
            "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
            "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c");

    public static final KeyPair TEST_3 = pair(
            "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
            "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025");

    public static KeyPair pair(String seed, String publicKey) {
        try {
            KeyFactory keys = KeyFactory.getInstance("Ed25519");
            return new KeyPair(
                    keys.generatePublic(
                            new X509EncodedKeySpec(HexFormat.of().parseHex("302a300506032b6570032100" + publicKey))),
                    keys.generatePrivate(new PKCS8EncodedKeySpec(
                            HexFormat.of().parseHex("302e020100300506032b657004220420" + seed))));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }
}
