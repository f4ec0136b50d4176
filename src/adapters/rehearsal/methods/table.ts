import type { Method } from '../call.ts';
import { answerCallbackQuery, answerPreCheckoutQuery, sendInvoice } from './asking.ts';
import {
  deleteMessage,
  deleteMessages,
  editMessageCaption,
  editMessageMedia,
  editMessageReplyMarkup,
  editMessageText,
} from './editing.ts';
import { deleteWebhook, getMe, setMyCommands, setMyDescription, setMyShortDescription } from './profile.ts';
import { getFile, sendDocument, sendMediaGroup, sendPhoto } from './showing.ts';
import { copyMessage, forwardMessage, sendChatAction, sendMessage } from './talking.ts';

/** Every method of the API that the stand-in knows, but for `getUpdates`, which may have to wait. */
export const METHODS: Readonly<Record<string, Method>> = {
  answerCallbackQuery,
  answerPreCheckoutQuery,
  copyMessage,
  deleteMessage,
  deleteMessages,
  deleteWebhook,
  editMessageCaption,
  editMessageMedia,
  editMessageReplyMarkup,
  editMessageText,
  forwardMessage,
  getFile,
  getMe,
  sendChatAction,
  sendDocument,
  sendInvoice,
  sendMediaGroup,
  sendMessage,
  sendPhoto,
  setMyCommands,
  setMyDescription,
  setMyShortDescription,
};
