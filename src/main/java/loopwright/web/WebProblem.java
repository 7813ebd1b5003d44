package loopwright.web;

import loopwright.problem.Problem;

/** Why a request was not served as asked; each has its HTTP status. */
public enum WebProblem implements Problem {
  MISSING(
      "W-101", 404, "There is no {0} {1}. The name may have been typed wrongly; try the search."),
  STALE_EDIT(
      "W-102",
      409,
      "{0} was changed by {1} after you opened it. Nothing of yours was stored; look at what"
          + " changed, then enter yours again."),
  WRONG_TOKEN(
      "W-103",
      403,
      "This form did not come from a page of your present session, so nothing was stored. Go back,"
          + " reload the page and send it again."),
  NOT_ALLOWED("W-104", 403, "As {0} you may not do this. Ask somebody with the right to {1}."),
  SIGNED_OUT("W-105", 401, "You are not signed in. Sign in and ask again."),
  TOO_LARGE(
      "W-106",
      413,
      "What was sent is larger than the {0} MB that are taken here. Nothing was stored. Split it"
          + " into smaller files."),
  NOT_FOUND("W-107", 404, "There is no page at this address. Check it, or use the search."),
  NO_SUCH_METHOD("W-108", 405, "This address can't be asked in this way."),
  UNREADABLE("W-109", 400, "The request could not be read. Go back and try again."),
  FAILED(
      "W-110",
      500,
      "Something went wrong on our side, and nothing was stored. Tell your administrator the"
          + " number {0}; the log holds the cause under it."),
  CANNOT_LISTEN(
      "W-111",
      500,
      "Nothing can listen on {0}, port {1}: {2}. Stop the other program, or choose another port or"
          + " address."),
  NO_KEYSTORE("W-112", 500, "{0} can't be used as a keystore: {1}. Check the file and password.");

  private final String code;
  private final int status;
  private final String sentence;

  WebProblem(String code, int status, String sentence) {
    this.code = code;
    this.status = status;
    this.sentence = sentence;
  }

  @Override
  public String code() {
    return code;
  }

  @Override
  public String sentence() {
    return sentence;
  }

  int status() {
    return status;
  }
}
